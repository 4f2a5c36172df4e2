using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Rotation;

/// <summary>What is known for looking ahead.</summary>
/// <param name="Depths">Least tread depth of the tyre that now sits at each position.</param>
/// <param name="WearPerThousandKilometres">Tread lost per 1 000 km at each position; the spare loses none.</param>
/// <param name="Interval">Distance between rotations.</param>
/// <param name="ReplaceAt">A tyre is replaced at this depth.</param>
public sealed record WearOutlook(IReadOnlyDictionary<Position, Length> Depths, IReadOnlyDictionary<Position, Length> WearPerThousandKilometres, Length Interval, Length ReplaceAt)
{
    /// <summary>A tyre is to be replaced now, whatever tread it has.</summary>
    public bool ReplaceNow { get; init; }
}

/// <summary>One rotation ahead.</summary>
/// <param name="After">Distance from now; 0 for the rotation of today.</param>
/// <param name="Depths">Tread depths at that distance, by the position that each tyre then moves to.</param>
public sealed record ScheduledRotation(Length After, IReadOnlyDictionary<Position, Length> Depths);

/// <summary>Tread depths looked ahead with and without rotation.</summary>
/// <param name="Schedule">Rotations up to the distance asked for, and before the first tyre is worn.</param>
/// <param name="FirstReplacement">Distance until the first tyre is at its limit with rotation, or null where none wears.</param>
/// <param name="Unrotated">The same where nothing is rotated.</param>
/// <param name="AtFirstReplacement">What each tyre has left above the limit when the first one is at it, by the position where it then sits.</param>
public sealed record RotationAhead(IReadOnlyList<ScheduledRotation> Schedule, Length? FirstReplacement, Length? Unrotated, IReadOnlyDictionary<Position, Length> AtFirstReplacement)
{
    private const double MostKilometres = 2_000_000;

    /// <summary>
    /// Looks ahead: every tyre wears at the steady rate of the position where it sits, and the pattern is done now and then at
    /// each interval.
    /// </summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="outlook">Depths and rates for every position that the pattern moves; interval and limit.</param>
    /// <param name="ahead">How far the schedule is written.</param>
    /// <returns>Distances from now. A tyre that is at its limit already, or is to be replaced for another reason, gives 0. Nothing is promised beyond 2 000 000 km.</returns>
    /// <source>linear wear, tread lost per 1 000 km (49 CFR 575.104); calculated</source>
    public static RotationAhead For(RotationPattern pattern, WearOutlook outlook, Length ahead)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(outlook);
        var positions = outlook.Depths.Keys.OrderBy(p => p.IsSpare ? int.MaxValue : p.Axle).ThenBy(p => p.Side).ThenBy(p => p.Dual).ToList();
        var rates = positions.Select(p => RateMillimetresPerKm(outlook, p)).ToArray();
        var goes = positions.Select(p => positions.IndexOf(pattern.Goes(p))).ToArray();
        var limitMm = outlook.ReplaceAt.Millimetres;
        var usable = positions.Select(p => outlook.Depths[p].Millimetres - limitMm).ToArray();
        var unrotated = FirstKm(usable, rates);
        if (outlook.ReplaceNow)
        {
            return new RotationAhead([], Length.FromKilometres(0), Length.FromKilometres(0), Named(usable, 0));
        }

        var schedule = new List<ScheduledRotation>();
        var at = 0.0;
        Rotate();
        var interval = outlook.Interval.Kilometres;
        while (at < MostKilometres)
        {
            if (FirstKm(usable, rates) is { } first && first <= interval)
            {
                Wear(usable, rates, first);
                return Result(at + first);
            }

            Wear(usable, rates, interval);
            at += interval;
            Rotate();
        }

        return Result(null);

        void Rotate()
        {
            var moved = new double[usable.Length];
            for (var i = 0; i < usable.Length; i++)
            {
                moved[goes[i]] = usable[i];
            }

            usable = moved;
            if (at <= ahead.Kilometres + 1e-9 && pattern.Moves.Count > 0)
            {
                schedule.Add(new ScheduledRotation(Length.FromKilometres(at), Named(usable, limitMm)));
            }
        }

        RotationAhead Result(double? firstKm) => new(
            schedule,
            firstKm is { } km ? Length.FromKilometres(km) : null,
            unrotated is { } u ? Length.FromKilometres(u) : null,
            Named(usable, 0));

        Dictionary<Position, Length> Named(double[] depthsMm, double addMm) =>
            positions.Select((p, i) => (p, depth: Length.FromMillimetres(depthsMm[i] + addMm))).ToDictionary(x => x.p, x => x.depth);
    }

    private static double RateMillimetresPerKm(WearOutlook outlook, Position position) =>
        outlook.WearPerThousandKilometres.TryGetValue(position, out var rate) ? rate.Millimetres / 1000 : 0;

    private static double? FirstKm(double[] usableMm, double[] ratesMmPerKm)
    {
        double? first = null;
        for (var i = 0; i < usableMm.Length; i++)
        {
            var km = usableMm[i] <= 0 ? 0 : ratesMmPerKm[i] > 0 ? usableMm[i] / ratesMmPerKm[i] : double.PositiveInfinity;
            if (double.IsFinite(km) && (first is not { } f || km < f))
            {
                first = km;
            }
        }

        return first;
    }

    private static void Wear(double[] usableMm, double[] ratesMmPerKm, double km)
    {
        for (var i = 0; i < usableMm.Length; i++)
        {
            usableMm[i] -= ratesMmPerKm[i] * km;
        }
    }
}
