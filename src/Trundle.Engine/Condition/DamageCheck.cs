using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>Damages by kind, place and size, and whether they may be repaired.</summary>
internal static class DamageCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        foreach (var damage in assembly.Damage)
        {
            switch (damage.Kind)
            {
                case DamageKind.Cord:
                    Say(book, assembly, damage, "damage.cord", null);
                    break;
                case DamageKind.Bulge:
                    Say(book, assembly, damage, "damage.bulge", null);
                    break;
                case DamageKind.Cut:
                    Cut(book, assembly, damage);
                    break;
                case DamageKind.Puncture:
                    Puncture(book, assembly, damage);
                    break;
                case DamageKind.Crack:
                    Say(book, assembly, damage, "damage.crack", null);
                    break;
                case DamageKind.Bead:
                    var tear = Figures.Of("condition.bead-tear");
                    Say(book, assembly, damage, damage.Size is { } size && !Above(size, tear.As<Length>()) ? "damage.bead.small" : "damage.bead", tear.Limit(4));
                    break;
                case DamageKind.Other:
                    Say(book, assembly, damage, "damage.other", null);
                    break;
            }
        }
    }

    private static void Cut(CheckBook book, Assembly assembly, Damage damage)
    {
        var least = Figures.Of("condition.cut-least");
        var share = Figures.Of("condition.cut-share");
        var width = assembly.Tyre?.Marking?.Size is { } marked ? marked.SectionWidth ?? marked.DesignSectionWidth : null;
        var byWidth = width is { } w ? w * (share.Value / 100) : (Length?)null;
        var limit = byWidth is { } b && b > least.As<Length>() ? b : least.As<Length>();
        var words = new Limit(Amount.Of(limit, "mm", 1), least.Source);
        if (width is null)
        {
            book.Need(assembly.Position.ToString(), "the tyre's marking", "a cut is held against 10 % of the section width");
        }

        if (damage.Size is null)
        {
            book.Need(assembly.Position.ToString(), "the size of the cut", "it is held against 25 mm and 10 % of the section width");
        }

        var rule = damage.Size is { } size && Above(size, limit) ? "damage.cut.large"
            : damage.Place == DamagePlace.Tread && damage.Size is not null ? "damage.cut.tread"
            : "damage.cut.side";
        if (book.Rules is RuleSet.UnitedStates or RuleSet.EuropeanUnion)
        {
            // These texts name no length: theirs is what the probe finds, and another country's figure is no limit of theirs.
            Say(book, assembly, damage, rule, null, $"How long a cut is called large is told here by {words.Amount.Text} ({least.Source.ForPeople}), as guidance only: what counts is whether it reaches ply, cord or belt.");
            return;
        }

        Say(book, assembly, damage, rule, words);
    }

    private static void Puncture(CheckBook book, Assembly assembly, Damage damage)
    {
        var truck = assembly.Tyre?.Marking?.Size.TyreClass == TyreClass.Truck;
        var limit = Figures.Of(truck ? "condition.puncture-truck" : "condition.puncture");
        if (damage.Place != DamagePlace.Tread)
        {
            Say(book, assembly, damage, "damage.puncture.side", null);
            return;
        }

        if (damage.Size is { } size && Above(size, limit.As<Length>()))
        {
            Say(book, assembly, damage, "damage.puncture.large", limit.Limit(3));
            return;
        }

        var repairTread = Figures.Of("condition.repair-tread");
        if (assembly.Tread is { } tread && tread.All.Any() && !Above(tread.All.Min(t => t.Depth), repairTread.As<Length>()))
        {
            Say(book, assembly, damage, "damage.puncture.worn", repairTread.Limit(4));
            return;
        }

        if (damage.Size is null)
        {
            book.Need(assembly.Position.ToString(), "the size of the puncture, measured after preparation", "only small ones are repaired");
        }

        Say(book, assembly, damage, truck ? "damage.puncture.crown-truck" : "damage.puncture.crown", limit.Limit(3), [.. RepairCautions(assembly), .. BritishHole(book, damage, truck)]);
    }

    /// <summary>Where a repair may lie, and what else speaks against one.</summary>
    private static IEnumerable<string> RepairCautions(Assembly assembly)
    {
        if (assembly.Tyre?.Marking?.Size is { } marked && RepairArea.Of(marked) is { } area)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"Only inside the central {area.Band.Millimetres:0.#} mm of this tyre: {area.Source.ForPeople}. Nearer the edge it counts as shoulder.");
        }

        yield return "Repairs never overlap; never over an improper repair; a string plug or a patch alone is no repair, and a tube is no remedy.";
        if (assembly.Damage.Count(d => d.Kind == DamageKind.Puncture) > 1)
        {
            yield return "More than one puncture: how many repairs a tyre may have depends on its speed symbol; with V and above, some allow one only. Ask the tyre's maker.";
        }

        if (assembly.Tyre is { } tyre && SidewallMarks.IsRunFlat(tyre))
        {
            yield return "A run-flat tyre that ran without air: its maker's word only, and many say no repair.";
        }
    }

    /// <summary>The British standard's hole is a little smaller than the chart's quarter inch.</summary>
    private static IEnumerable<string> BritishHole(CheckBook book, Damage damage, bool truck)
    {
        var hole = Figures.Of("condition.puncture-uk");
        if (book.Rules == RuleSet.UnitedKingdom && !truck && damage.Size is { } size && Above(size, hole.As<Length>()))
        {
            yield return $"Over {hole.Limit(0).Amount.Text}, the greatest hole after preparation of {hole.Source.ForPeople}: by that standard this tyre is not repaired.";
        }
    }

    private static bool Above(Length length, Length limit) => length.Millimetres > limit.Millimetres + CheckBook.Hair;

    private static void Say(CheckBook book, Assembly assembly, Damage damage, string rule, Limit? limit, params string[] cautions)
    {
        var place = damage.Place switch
        {
            DamagePlace.Tread => "tread",
            DamagePlace.Shoulder => "shoulder",
            DamagePlace.Sidewall => "sidewall",
            DamagePlace.Bead => "bead",
        };
        var kind = damage.Kind switch
        {
            DamageKind.Puncture => "puncture",
            DamageKind.Cut => "cut",
            DamageKind.Bulge => "bulge",
            DamageKind.Cord => "cord showing",
            DamageKind.Crack => "crack",
            DamageKind.Bead => "bead damage",
            DamageKind.Other => "damage",
        };
        var measured = damage.Size is { } size
            ? new Amount(size.Millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"{kind}, {place}, {size.Millimetres:0.##} mm"))
            : Amount.Word($"{kind}, {place}");
        book.Judge(rule, assembly.Position.ToString(), true, measured, limit, null, cautions);
    }
}
