using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>All repairs of one tyre together: those that it has, and one for each puncture of its tread. How many, and how far from each other.</summary>
internal static partial class PunctureCheck
{
    private sealed partial class Judged
    {
        private List<Damage> Others => [.. assembly.Damage.Where(d => !ReferenceEquals(d, damage) && d is { Kind: DamageKind.Puncture, Place: DamagePlace.Tread })];

        public void Repairs()
        {
            var (others, repairs) = (Others, history.Repairs);
            if (repairs is null)
            {
                book.Need(At, "the repairs that the tyre has already, or that it has none", "their number and distance count");
            }

            var earlier = repairs?.Count ?? 0;
            if (earlier + others.Count == 0)
            {
                return;
            }

            HowMany(earlier, others.Count);
            if (earlier > 0)
            {
                Distance();
            }

            foreach (var other in others)
            {
                FromOther(other);
            }
        }

        private void HowMany(int earlier, int others)
        {
            var before = earlier + others;
            var words = string.Create(CultureInfo.InvariantCulture, $"{earlier} earlier {(earlier == 1 ? "repair" : "repairs")}");
            var count = others == 0
                ? Amount.Number(earlier, earlier == 1 ? "earlier repair" : "earlier repairs", 0)
                : new Amount(before, "repairs", string.Create(CultureInfo.InvariantCulture, $"{others + 1} punctures and {words}: {before + 1} repairs in one tyre"));
            book.ByWorkshop(JudgedQuantity.EarlierRepairs, Position, At, before, count);
            if (book.LimitOrNone("damage.puncture.repairs", Position) is not { } most)
            {
                Together("damage.puncture.repairs-table", null, count);
            }
            else if (most.IsBrokenBy(before))
            {
                Together("damage.puncture.repairs", most.Limit, count);
            }
        }

        /// <summary>What is true of several punctures together is said once for the tyre.</summary>
        private void Together(string rule, Limit? limit, Amount measured)
        {
            NothingAgainst = false;
            if (!book.Result().Findings.Any(f => f.Rule == rule && f.Position == At && f.Measured.Text == measured.Text))
            {
                Against(rule, limit, measured);
            }
        }

        private void FromOther(Damage other)
        {
            var (length, turn) = (book.RepairLimit(JudgedQuantity.RepairDistance, Position), book.RepairLimit(JudgedQuantity.RepairTurn, Position));
            if (damage.Around is not { } here || other.Around is not { } there)
            {
                book.Need(At, "where each puncture lies round the tyre: 'around', degrees from the valve", string.Create(CultureInfo.InvariantCulture, $"repairs never overlap, and lie {length.Value:0} mm or {turn.Value:0}° apart"));
                Together("damage.puncture.near", length.Limit, Amount.Word("several punctures, and where they lie round the tyre was not told"));
                return;
            }

            var apart = Turn(here, there);
            var along = assembly.Tyre?.Marking?.Size.OverallDiameter is { } diameter ? diameter * (Math.PI * apart.Degrees / 360) : (Length?)null;
            var (first, second) = here.Degrees <= there.Degrees ? (here, there) : (there, here);
            var measured = new Amount(apart.Degrees, "°", string.Create(CultureInfo.InvariantCulture, $"punctures at {first.Degrees:0}° and {second.Degrees:0}°: {apart.Degrees:0}°{(along is { } a ? $" or {a.Millimetres:0} mm" : "")} apart round the tyre"));
            if (Math.Abs(apart.Degrees - 180) <= Figures.Of("condition.repair-opposite").Value)
            {
                Together("damage.puncture.opposite", null, measured);
            }
            else if (turn.IsBrokenBy(apart.Degrees) && (along is not { } mm || length.IsBrokenBy(mm.Millimetres)))
            {
                Together("damage.puncture.near", turn.Limit, measured);
            }
        }

        /// <summary>Round to the nearest earlier repair, where the place of each is known; else null.</summary>
        private Angle? TurnFromRepair() =>
            damage.Around is { } here && history.Repairs!.All(r => r.Around is not null)
                ? Angle.FromDegrees(history.Repairs!.Min(r => Turn(here, r.Around!.Value).Degrees))
                : null;

        private static Angle Turn(Angle a, Angle b)
        {
            var turn = Math.Abs(a.Degrees - b.Degrees) % 360;
            return Angle.FromDegrees(Math.Min(turn, 360 - turn));
        }

        private void Distance()
        {
            var (apart, round) = (damage.FromRepair, damage.RoundFromRepair ?? TurnFromRepair());
            if (apart is null && round is null)
            {
                book.Need(At, "how far the injury is from the nearest earlier repair", "repairs never overlap");
                Against("damage.puncture.near", book.RepairLimit(JudgedQuantity.RepairDistance, Position).Limit, Amount.Word("how far it is from the earlier repair was not told"));
                return;
            }

            if (apart is { Millimetres: <= 0 })
            {
                Against("damage.puncture.overlap", null, Amount.Word("overlaps an earlier repair"));
                return;
            }

            var (length, turn) = (book.RepairLimit(JudgedQuantity.RepairDistance, Position), book.RepairLimit(JudgedQuantity.RepairTurn, Position));
            var words = string.Join(", ", new[]
            {
                apart is { } a ? string.Create(CultureInfo.InvariantCulture, $"{a.Millimetres:0} mm") : null,
                round is { } r ? string.Create(CultureInfo.InvariantCulture, $"{r.Degrees:0}° round") : null,
            }.OfType<string>()) + " from an earlier repair";
            var measured = apart is { } mm ? new Amount(mm.Millimetres, "mm", words) : new Amount(round!.Value.Degrees, "°", words);
            if (apart is { } distance)
            {
                book.ByWorkshop(JudgedQuantity.RepairDistance, Position, At, distance.Millimetres, measured);
            }

            if (round is { } angle)
            {
                book.ByWorkshop(JudgedQuantity.RepairTurn, Position, At, angle.Degrees, measured);
            }

            if (round is { } half && Math.Abs(half.Degrees - 180) <= Figures.Of("condition.repair-opposite").Value)
            {
                Against("damage.puncture.opposite", null, measured);
                return;
            }

            // Either one is enough: the practice names them as the same distance on a car tyre.
            if (apart is { } d && !length.IsBrokenBy(d.Millimetres))
            {
                return;
            }

            if (round is not { } t || turn.IsBrokenBy(t.Degrees))
            {
                Against("damage.puncture.near", apart is null ? turn.Limit : length.Limit, measured);
            }
        }
    }
}
