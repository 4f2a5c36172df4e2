using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>Whether a punctured tyre may be repaired: its maker's word first, then the injury, then the tyre. Everything that speaks against it is said, not only the first.</summary>
internal static partial class PunctureCheck
{
    public static void Check(CheckBook book, Assembly assembly, Damage damage)
    {
        var history = assembly.Tyre?.History ?? RepairHistory.NotKnown;
        var judged = new Judged(book, assembly, damage, history);
        judged.Maker();
        if (damage.Place != DamagePlace.Tread)
        {
            judged.Against("damage.puncture.side", null);
            return;
        }

        judged.Injury();
        judged.Repairs();
        judged.Tyre();
        if (judged.NothingAgainst)
        {
            judged.Repairable();
        }
    }

    private sealed partial class Judged(CheckBook book, Assembly assembly, Damage damage, RepairHistory history)
    {
        private readonly TyreClass? _class = assembly.Tyre?.Marking?.Size.TyreClass;

        public bool NothingAgainst { get; private set; } = true;

        private Position Position => assembly.Position;

        private string At => assembly.Position.ToString();

        private bool IsRunFlat => history.RunFlat || (assembly.Tyre is { } tyre && SidewallMarks.IsRunFlat(tyre));

        private bool IsSelfSealing => history.SelfSealing;

        private string Policy => history.PolicyText is { } text ? $" ({text})" : "";

        public void Against(string rule, Limit? limit, Amount? measured = null, params string[] cautions)
        {
            NothingAgainst = false;
            book.Judge(rule, At, true, measured ?? DamageCheck.Measured(damage), limit, null, cautions);
        }

        public void Maker()
        {
            switch (history.Policy)
            {
                case RepairPolicy.NotPermitted:
                    Against("damage.puncture.maker", null, Amount.Word($"repair not permitted by the tyre's maker{Policy}"));
                    break;
                case RepairPolicy.Permitted:
                    break;
                case null:
                    book.Need(At, "the tyre maker's repair policy: permitted, or not permitted", "the maker's word comes before every chart");
                    if (IsRunFlat)
                    {
                        Against("damage.puncture.run-flat", null, Amount.Word("run-flat tyre, maker's policy not known"));
                    }

                    if (IsSelfSealing)
                    {
                        Against("damage.puncture.self-sealing", null, Amount.Word("self-sealing tyre, maker's policy not known"));
                    }

                    break;
            }
        }

        public void Injury()
        {
            var most = book.LimitOrNone("damage.puncture.large", Position);
            if (most is null)
            {
                Against("damage.puncture.class", null);
            }

            if (damage.Size is not { Metres: > 0 } size)
            {
                book.Need(At, "the size of the puncture, measured after preparation", "only small ones are repaired");
                Against("damage.puncture.unmeasured", most?.Limit);
            }
            else
            {
                DamageCheck.Workshop(book, assembly, damage, JudgedQuantity.InjurySize, size);
                if (most?.IsBrokenBy(size.Millimetres) == true)
                {
                    Against("damage.puncture.large", most.Limit);
                }
            }

            Reach();
            if (damage.Lean is { } lean)
            {
                var limit = book.Limit("damage.puncture.lean", Position);
                var measured = new Amount(lean.Degrees, "°", string.Create(CultureInfo.InvariantCulture, $"leans {lean.Degrees:0.#}°"));
                book.ByWorkshop(JudgedQuantity.InjuryLean, Position, At, lean.Degrees, measured);
                if (limit.IsBrokenBy(lean.Degrees))
                {
                    Against("damage.puncture.lean", limit.Limit, measured);
                }
            }
        }

        private void Reach()
        {
            if (RepairArea.Of(book.Subject, Position) is not { } area)
            {
                return;
            }

            if (damage.FromMiddle is not { } from)
            {
                book.Need(At, "how far from the middle of the tread the injury reaches, outside or inside", string.Create(CultureInfo.InvariantCulture, $"it is repaired only inside the central {area.Band.Millimetres:0.#} mm"));
                return;
            }

            var share = from * 2 / area.Width * 100;
            var measured = new Amount(from.Millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"reaches {from.Millimetres:0.#} mm from the middle, the central band to {area.Band.Millimetres / 2:0.#} mm"));
            book.ByWorkshop(JudgedQuantity.InjuryReach, Position, At, share, measured);
            if (area.Share.IsBrokenBy(share))
            {
                Against("damage.puncture.edge", area.Share.Limit, measured);
            }
        }

        public void Tyre()
        {
            var worn = book.Limit("damage.puncture.worn", Position);
            if (assembly.Tread is { } tread && tread.All.Any())
            {
                var least = tread.All.Min(t => t.Depth);
                var measured = Amount.Of(least, "mm", 1);
                book.ByWorkshop(JudgedQuantity.TreadAtRepair, Position, At, least.Millimetres, measured);
                if (worn.IsBrokenBy(least.Millimetres))
                {
                    Against("damage.puncture.worn", worn.Limit);
                }
            }

            if (assembly.Tyre is { Tin: { } typed } && book.Subject.Date is { } day && TinReader.Read(typed, day) is { IsRead: true } tin && tin.Value.AgeOn(day) is { } age)
            {
                var years = age.Years ?? age.LeastYears;
                var limit = book.Limit("damage.puncture.age", Position);
                var measured = Amount.Number(years, "years", 1);
                book.ByWorkshop(JudgedQuantity.AgeAtRepair, Position, At, years, measured);
                if (limit.IsBrokenBy(years))
                {
                    Against("damage.puncture.age", limit.Limit, measured);
                }
            }

            if (assembly.Damage.FirstOrDefault(d => d.Kind == DamageKind.Crack) is { } crack)
            {
                Against("damage.puncture.ageing", null, DamageCheck.Measured(crack));
            }

            switch (history.RanLow)
            {
                case true:
                    Against("damage.puncture.ran-low", null, RunLow.Told(history), [.. RunLow.Cautions(assembly.Tyre), .. IsRunFlat ? new[] { "A run-flat tyre that ran without air: its maker's word only, and many say no repair." } : []]);
                    break;
                case null:
                    book.Need(At, "whether the tyre was driven with little or no air, how far and how long", "a tyre run low is looked at inside before it is repaired");
                    break;
                case false:
                    break;
            }
        }

        public void Repairable()
        {
            var truck = _class == TyreClass.Truck;
            book.Judge(truck ? "damage.puncture.crown-truck" : "damage.puncture.crown", At, true, DamageCheck.Measured(damage), book.Limit("damage.puncture.large", Position).Limit, null, [.. Cautions(truck)]);
        }

        private IEnumerable<string> Cautions(bool truck)
        {
            if (RepairArea.Of(book.Subject, Position) is { } area)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"Only inside the central {area.Band.Millimetres:0.#} mm of this tyre: {area.Share.Source.ForPeople}. Nearer the edge it counts as shoulder.");
            }

            yield return "Repairs never overlap; never over an improper repair; a string plug or a patch alone is no repair, and a tube is no remedy.";
            yield return history.Policy == RepairPolicy.Permitted
                ? $"As the tyre's maker says{Policy}; a repair may end the speed rating with some makers."
                : "The tyre maker's own policy comes first; a repair may end the speed rating with some makers: ask.";
            if (IsSelfSealing)
            {
                yield return "Scrape the sealant off before the repair, as the tyre's maker says.";
            }

            if (truck)
            {
                foreach (var caution in RunLow.Cautions(assembly.Tyre))
                {
                    yield return caution;
                }
            }
        }
    }
}
