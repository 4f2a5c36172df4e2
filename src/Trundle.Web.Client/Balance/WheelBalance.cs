using Trundle.Engine.Balance;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Visits.Pictures;
using Trundle.Web.Client.Entries;
using Trundle.Web.Client.Steps;

namespace Trundle.Web.Client.Balance;

/// <summary>The balance of one wheel on this visit: its part read by the command's own reader, solved by the engine, and told in pictures.</summary>
public sealed class WheelBalance
{
    private static (string Key, BalanceOutcome? Outcome) _last = ("", null);
    private static (VisitReading? Reading, WheelBalance? Told) _told;

    private WheelBalance(Position position, BalanceFile? file, BalanceOutcome? outcome, Dictionary<string, string> problems) =>
        (Position, File, Outcome, Problems) = (position, file, outcome, problems);

    /// <summary>Where the wheel came in.</summary>
    public Position Position { get; }

    /// <summary>The part as read, or null where it has a problem or is not there.</summary>
    public BalanceFile? File { get; }

    /// <summary>The weights to fit, or null where the readings are still to come.</summary>
    public BalanceOutcome? Outcome { get; }

    /// <summary>The problems of the part, by field.</summary>
    public IReadOnlyDictionary<string, string> Problems { get; }

    /// <summary>The path of the part's fields.</summary>
    public static string FieldAt(Position position) => $"fitted.{position}.balance";

    /// <summary>Reads and solves the part of a wheel. The same part is solved once, however often the page is drawn.</summary>
    public static WheelBalance Of(OpenVisit visit, Position position)
    {
        ArgumentNullException.ThrowIfNull(visit);
        if (_told.Told is { } told && ReferenceEquals(_told.Reading, visit.Reading) && told.Position == position)
        {
            return told;
        }

        var fresh = Fresh(visit, position);
        _told = (visit.Reading, fresh);
        return fresh;
    }

    private static WheelBalance Fresh(OpenVisit visit, Position position)
    {
        var byField = new Dictionary<string, string>(StringComparer.Ordinal);
        if (!visit.Reading.Read.Balance.TryGetValue(position, out var node))
        {
            return new WheelBalance(position, null, null, byField);
        }

        var problems = new List<Problem>();
        var file = BalanceFileReader.Read(node, Moves.Renewed(visit).At(position), problems);
        foreach (var problem in problems)
        {
            byField.TryAdd(visit.Reading.File.FieldOf(problem.Where), problem.Message);
        }

        return new WheelBalance(position, file, file?.Problem is { } solvable ? Solve(visit, position, solvable) : null, byField);
    }

    /// <summary>What must still be entered before the weights can be told: the control to go to and its name, in the order of the page.</summary>
    public IEnumerable<(string Field, string What)> Needs(OpenVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var at = FieldAt(Position);
        if (File is null && Problems.Count == 0)
        {
            yield return ($"{at}.settings.rimDistance", "settings, planes and drawer");
        }
        else if (File is not null && Outcome is null)
        {
            yield return ($"{at}.readings.inner.mass", "what the balancer shows");
        }

        foreach (var (under, control, what) in new[]
        {
            ("settings", "settings.rimDistance", "settings"),
            ("planes.inner", visit[$"{at}.planes.inner.kind"] is null ? "planes.inner.kind" : "planes.inner.radius", "inner plane"),
            ("planes.outer", visit[$"{at}.planes.outer.kind"] is null ? "planes.outer.kind" : "planes.outer.radius", "outer plane"),
            ("planes", "planes.inner.kind", "planes"),
            ("wheel", "wheel.spokes.count", "spokes"),
            ("stock", "stock.clip", "drawer"),
            ("tolerance", "tolerance.perPlane", "tolerance"),
            ("readingPlanes", "readingPlanes.inner.radius", "the machine’s planes"),
            ("forbidden", "forbidden.0.from", "the places to keep free"),
            ("readings", "readings.inner.mass", "what the balancer shows"),
        })
        {
            // A plane's own problem is told at the plane, and not at both again.
            if (Problems.Keys.Any(field => field == $"{at}.{under}" || (under != "planes" && field.StartsWith($"{at}.{under}.", StringComparison.Ordinal))))
            {
                yield return ($"{at}.{control}", what);
            }
        }
    }

    private static BalanceOutcome Solve(OpenVisit visit, Position position, BalanceProblem problem)
    {
        var key = string.Join('\n', visit.Fields.Under(FieldAt(position)).Select(e => $"{e.Field}={e.Typed}").Prepend(visit.Id.ToString("N")));
        if (_last.Key != key || _last.Outcome is null)
        {
            _last = (key, BalanceSolve.Run(problem, BalanceSolve.MostWorkInBrowser));
        }

        return _last.Outcome!;
    }

    /// <summary>The polar grid of a plane.</summary>
    public PolarView Polar(PlaneSide side, string unit)
    {
        var outcome = Outcome!;
        var radius = outcome.Problem.Planes.At(side).Radius;
        var before = outcome.Before.At(side);
        var left = outcome.Residual.At(side);
        var tolerance = side == PlaneSide.Inner ? outcome.Problem.Tolerance.Inner : outcome.Problem.Tolerance.Outer;
        return new PolarView(
            side == PlaneSide.Inner ? "Inner plane" : "Outer plane",
            new PolarMark(before.MassAt(radius), before.Place) { Error = Open(side, before.MassAt(radius)) },
            new PolarMark(left.MassAt(radius), left.Place),
            tolerance is null ? null : Mass.FromGrams(tolerance.At(radius).GramMillimetres / radius.Millimetres),
            unit);
    }

    /// <summary>How far a plane may be from what is reckoned by all that the display leaves open: the same on every side; null where it shows everything.</summary>
    private (Mass Mass, Angle Angle)? Open(PlaneSide side, Mass at) => File is { } file && DisplayReckoning.Of(Outcome!, file.Profile) is { } open && at.Si > 0
        ? (side == PlaneSide.Inner ? open.OffInner : open.OffOuter) is var off ? (off, Angle.FromRadians(off / at)) : null
        : null;

    /// <summary>True where the display leaves something open.</summary>
    public bool DisplayLeavesOpen => File is { } file && Outcome is { } outcome && DisplayReckoning.Of(outcome, file.Profile) is not null;

    /// <summary>The mass at the outer ring of both grids.</summary>
    public Mass FullScale(string unit) => PolarGrid.FullScale(
        new[] { PlaneSide.Inner, PlaneSide.Outer }.Select(s => Outcome!.Before.At(s).MassAt(Outcome.Problem.Planes.At(s).Radius)), unit);

    /// <summary>The wheel's face with its weights.</summary>
    public FaceView Face(OpenVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var outcome = Outcome!;
        var wheel = visit.State.Arrived.At(Position)?.Wheel;
        var spokes = outcome.Problem.Spokes;
        return new FaceView(
            $"Face of {visit.Reading.Name(Position)}",
            wheel?.Rim is { } rim ? Diameter(rim) : outcome.Problem.Planes.Inner.Radius * 2,
            spokes?.Numbered ?? [],
            wheel?.Bore,
            wheel?.BoltCircle,
            [.. outcome.Weights.Select(w => Weight(visit, outcome, w))]);
    }

    /// <summary>What to fit in a plane, in words: "35 g at 115°", "15 g behind 4".</summary>
    public IReadOnlyList<string> Fit(OpenVisit visit, PlaneSide side) =>
        [.. Outcome!.Weights.Where(w => w.Plane == side).Select(w => $"{visit.Units.One(w.Mass)} {Where(w)}")];

    /// <summary>Where a weight goes, in words.</summary>
    public string Where(FittedWeight weight)
    {
        ArgumentNullException.ThrowIfNull(weight);
        var plane = weight.Plane == PlaneSide.Inner ? Outcome!.Problem.Inner : Outcome!.Problem.Outer;
        var spoke = plane.BehindSpokes ? SpokeAt(weight.Place) : null;
        return spoke is { } number
            ? FormattableString.Invariant($"behind spoke {number} ({weight.Place})")
            : $"at {weight.Place}";
    }

    /// <summary>Where the valve stands on the clock when the weight's place is at twelve.</summary>
    public static string ValveAt(FittedWeight weight)
    {
        ArgumentNullException.ThrowIfNull(weight);
        return ClockFace.ValveAt(weight.Place);
    }

    /// <summary>The number of the spoke at a place, counted clockwise from the first behind the valve.</summary>
    private int? SpokeAt(WheelAngle place)
    {
        if (Outcome!.Problem.Spokes is not { } spokes)
        {
            return null;
        }

        for (var i = 0; i < spokes.Count; i++)
        {
            if (Math.Abs((spokes.Numbered[i] - place).Degrees) < 0.5)
            {
                return i + 1;
            }
        }

        return null;
    }

    private static FaceWeight Weight(OpenVisit visit, BalanceOutcome outcome, FittedWeight weight)
    {
        var plane = weight.Plane == PlaneSide.Inner ? outcome.Problem.Inner : outcome.Problem.Outer;
        var arc = weight.Size is { } size ? Angle.FromDegrees(double.RadiansToDegrees(size / plane.Place.Radius)) : (Angle?)null;
        return new FaceWeight(
            weight.Plane == PlaneSide.Inner ? $"{visit.Units.One(weight.Mass)}, inner" : visit.Units.One(weight.Mass),
            weight.Place,
            plane.Place.Radius,
            arc,
            weight.Plane == PlaneSide.Inner || plane.BehindSpokes,
            weight.Kind == WeightKind.Clip);
    }

    private static Length Diameter(RimStamp rim) =>
        rim.DiameterInches is { } inches ? Length.FromInches(inches) : Length.FromMillimetres(rim.DiameterMillimetres ?? 400);
}
