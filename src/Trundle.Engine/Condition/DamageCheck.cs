using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>Damages by kind, place and size. Whether a puncture may be repaired is the puncture check's.</summary>
internal static class DamageCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        foreach (var damage in assembly.Damage)
        {
            One(book, assembly, damage);
        }
    }

    /// <summary>One damage, with what it says of the whole tyre.</summary>
    public static void One(CheckBook book, Assembly assembly, Damage damage)
    {
        if (damage.CordShows == true && damage.Kind is not (DamageKind.Cord or DamageKind.Bead))
        {
            Say(book, assembly, damage, "damage.cord", null);
            return;
        }

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
                PunctureCheck.Check(book, assembly, damage);
                break;
            case DamageKind.Crack:
                Crack(book, assembly, damage);
                break;
            case DamageKind.Bead:
                var tear = book.Limit("damage.bead", assembly.Position);
                Workshop(book, assembly, damage, JudgedQuantity.BeadTear, damage.Size);
                Say(book, assembly, damage, damage is { Size: { } size, CordShows: not true } && !tear.IsBrokenBy(size.Millimetres) ? "damage.bead.small" : "damage.bead", tear.Limit);
                break;
            case DamageKind.Separation:
                Say(book, assembly, damage, "damage.separation", null);
                break;
            case DamageKind.Chunk:
                Say(book, assembly, damage, "damage.chunk", null);
                break;
            case DamageKind.RunLowMarks:
                Say(book, assembly, damage, "damage.run-low-marks", null, [.. RunLow.Cautions(assembly.Tyre)]);
                break;
            case DamageKind.Ripple:
                Say(book, assembly, damage, "damage.ripple", null);
                break;
            case DamageKind.Leak:
                Say(book, assembly, damage, "damage.leak", null);
                break;
            case DamageKind.Oil:
                Say(book, assembly, damage, "damage.oil", null);
                break;
            case DamageKind.Other:
                Say(book, assembly, damage, "damage.other", null);
                break;
        }
    }

    private static void Cut(CheckBook book, Assembly assembly, Damage damage)
    {
        if (damage.Place == DamagePlace.Bead && Bead(book, assembly, damage))
        {
            return;
        }

        var at = assembly.Position;
        var least = book.CutLimit(JudgedQuantity.CutLength, at);
        var share = book.CutLimit(JudgedQuantity.CutShare, at);
        var width = assembly.Tyre?.Marking?.Size is { } marked ? marked.SectionWidth ?? marked.DesignSectionWidth : null;
        var byWidth = width is { } w && (w * (share.Value / 100)).Millimetres > least.Compared ? w * (share.Value / 100) : (Length?)null;
        var words = byWidth is { } greater ? new Limit(Amount.Of(greater, "mm", 1), share.Source) : least.Limit;
        if (width is null)
        {
            book.Need(at.ToString(), "the tyre's marking", $"a cut is held against {share.Text} of the section width");
        }

        if (damage.Size is { } size)
        {
            Workshop(book, assembly, damage, JudgedQuantity.CutLength, size);
            if (width is { } section)
            {
                book.ByWorkshop(JudgedQuantity.CutShare, at, at.ToString(), size / section * 100, Measured(damage));
            }
        }
        else
        {
            book.Need(at.ToString(), "the size of the cut", $"it is held against {least.Text} and {share.Text} of the section width");
        }

        var large = damage.Size is { } length && least.IsBrokenBy(length.Millimetres) && (width is not { } s || share.IsBrokenBy(length / s * 100));
        if (damage.Place != DamagePlace.Tread && damage.Depth is { } depth)
        {
            // The probe has answered what the length only makes likely: one cut, one answer.
            var deep = book.Limit("damage.cut.deep", at);
            Workshop(book, assembly, damage, JudgedQuantity.CutDepth, depth);
            if (deep.IsBrokenBy(depth.Millimetres))
            {
                Say(book, assembly, damage, "damage.cut.deep", deep.Limit, large && damage.CordShows != false ? [$"It is long too ({words.Amount.Text}): {book.Rule("damage.cut.large").Text}"] : []);
                return;
            }

            if (!large || damage.CordShows == false)
            {
                Say(book, assembly, damage, "damage.cut.shallow", deep.Limit);
                return;
            }

            book.Need(at.ToString(), "whether cord shows in the cut", "a long cut is taken to reach the cord until somebody looked");
        }
        else if (damage.Place != DamagePlace.Tread)
        {
            book.Need(at.ToString(), "how deep the cut goes, and whether cord shows", "a cut in sidewall, shoulder or bead is judged by its depth");
        }

        var below = damage.Place == DamagePlace.Tread && BelowTread(book, assembly, damage.Depth);
        if (large && damage is { Place: DamagePlace.Tread, CordShows: false, Depth: null })
        {
            book.Need(at.ToString(), "how deep the cut goes", "a long cut that is deeper than the tread is taken to reach the cord");
        }

        var rule = large && (damage.CordShows != false || below) ? "damage.cut.large"
            : below ? "damage.cut.tread.deep"
            : damage.Place == DamagePlace.Tread && damage.Size is not null ? "damage.cut.tread"
            : "damage.cut.side";
        if (rule == "damage.cut.tread.deep")
        {
            Say(book, assembly, damage, rule, assembly.Tread is { } grooves && grooves.All.Any() ? new Limit(Amount.Of(grooves.All.Max(t => t.Depth), "mm", 1), Source.Entered("the deepest groove, as measured")) : null);
            return;
        }

        if (book.Rules is RuleSet.UnitedStates or RuleSet.EuropeanUnion)
        {
            // These texts name no length: theirs is what the probe finds, and another country's figure is no limit of theirs.
            Say(book, assembly, damage, rule, null, $"How long a cut is called large is told here by {words.Amount.Text} ({words.Source.ForPeople}), as guidance only: what counts is whether it reaches ply, cord or belt.");
            return;
        }

        Say(book, assembly, damage, rule, words);
    }

    /// <summary>
    /// A cut is below the tread where it is deeper than the deepest groove that was measured: that no cord was seen in it settles nothing. Where no groove
    /// was measured, only what is no deeper than the least that a tyre on the road must have is known to end in the tread.
    /// </summary>
    private static bool BelowTread(CheckBook book, Assembly assembly, Length? depth)
    {
        if (depth is not { } probed)
        {
            return false;
        }

        if (assembly.Tread is { } tread && tread.All.Any())
        {
            return probed.Metres > tread.All.Max(t => t.Depth.Metres);
        }

        book.Need(assembly.Position.ToString(), "the tread depths", "a cut that is deeper than the tread is taken to reach what lies under it");
        return probed.Millimetres > book.InForce.TradeLimit("tread.depth", new RulePoint(book.Subject, assembly.Position)).Compared;
    }

    /// <summary>A cut at the bead is a torn bead, and a crack there is referred however shallow: at the bead no injury is harmless. False where the depth alone decides.</summary>
    private static bool Bead(CheckBook book, Assembly assembly, Damage damage)
    {
        var deep = book.Limit(damage.Kind == DamageKind.Crack ? "damage.crack.deep" : "damage.cut.deep", assembly.Position);
        if (damage.Depth is { } depth && deep.IsBrokenBy(depth.Millimetres))
        {
            return false;
        }

        var tear = book.Limit("damage.bead", assembly.Position);
        Workshop(book, assembly, damage, damage.Kind == DamageKind.Crack ? JudgedQuantity.CrackDepth : JudgedQuantity.CutDepth, damage.Depth);
        if (damage.Kind == DamageKind.Crack)
        {
            Say(book, assembly, damage, damage.Joined == true ? "damage.crack.deep" : "damage.crack.bead", deep.Limit);
            return true;
        }

        Workshop(book, assembly, damage, JudgedQuantity.BeadTear, damage.Size);
        if (damage.Size is null)
        {
            book.Need(assembly.Position.ToString(), "the size of the cut", $"a cut at the bead is held against {tear.Text}, as a tear of the bead");
        }

        Say(book, assembly, damage, damage.Size is { } size && tear.IsBrokenBy(size.Millimetres) ? "damage.bead" : "damage.bead.small", tear.Limit);
        return true;
    }

    private static void Crack(CheckBook book, Assembly assembly, Damage damage)
    {
        if (damage.Place == DamagePlace.Bead && Bead(book, assembly, damage))
        {
            return;
        }

        var deep = book.Limit("damage.crack.deep", assembly.Position);
        Workshop(book, assembly, damage, JudgedQuantity.CrackDepth, damage.Depth);
        if (damage.Joined == true || (damage.Depth is { } depth && deep.IsBrokenBy(depth.Millimetres)))
        {
            Say(book, assembly, damage, "damage.crack.deep", deep.Limit);
        }
        else if (damage is { Depth: not null, Joined: false })
        {
            Say(book, assembly, damage, "damage.crack.shallow", deep.Limit);
        }
        else
        {
            book.Need(assembly.Position.ToString(), "how deep the cracks go, and whether they have joined", "deep or joined cracks take the tyre out of service");
            Say(book, assembly, damage, "damage.crack", deep.Limit);
        }
    }

    /// <summary>A workshop's own limit of a length that was measured.</summary>
    public static void Workshop(CheckBook book, Assembly assembly, Damage damage, JudgedQuantity quantity, Length? length)
    {
        if (length is { } l)
        {
            book.ByWorkshop(quantity, assembly.Position, assembly.Position.ToString(), l.Millimetres, Measured(damage));
        }
    }

    public static void Say(CheckBook book, Assembly assembly, Damage damage, string rule, Limit? limit, params string[] cautions) =>
        book.Judge(rule, assembly.Position.ToString(), true, Measured(damage), limit, null, cautions);

    /// <summary>What was found, in words: kind, place, and what was measured.</summary>
    public static Amount Measured(Damage damage)
    {
        var parts = new List<string> { KindWord(damage.Kind), PlaceWord(damage.Place) };
        if (damage.Size is { } size)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{size.Millimetres:0.##} mm"));
        }

        if (damage.Depth is { } depth)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{depth.Millimetres:0.##} mm deep"));
        }

        if (damage.Joined == true)
        {
            parts.Add("joined");
        }

        if (damage.CordShows == true && damage.Kind != DamageKind.Cord)
        {
            parts.Add("cord to be seen");
        }

        return damage.Size is { } s ? new Amount(s.Millimetres, "mm", string.Join(", ", parts)) : Amount.Word(string.Join(", ", parts));
    }

    public static string PlaceWord(DamagePlace place) => place switch
    {
        DamagePlace.Tread => "tread",
        DamagePlace.Shoulder => "shoulder",
        DamagePlace.Sidewall => "sidewall",
        DamagePlace.Bead => "bead",
    };

    public static string KindWord(DamageKind kind) => kind switch
    {
        DamageKind.Puncture => "puncture",
        DamageKind.Cut => "cut",
        DamageKind.Bulge => "bulge",
        DamageKind.Cord => "cord showing",
        DamageKind.Crack => "crack",
        DamageKind.Bead => "bead damage",
        DamageKind.Separation => "separation",
        DamageKind.Chunk => "pieces torn out",
        DamageKind.RunLowMarks => "run-low marks inside",
        DamageKind.Ripple => "ripples or popping",
        DamageKind.Leak => "leak that is heard",
        DamageKind.Oil => "swollen by oil or solvent",
        DamageKind.Other => "damage",
    };
}
