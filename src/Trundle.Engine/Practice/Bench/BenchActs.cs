using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Bench;

/// <summary>
/// What is done at the practice bench, each act as one line, so that an attempt can be sent and done again elsewhere: whoever judges it judges what was done and believes no
/// score. Amounts are in SI units and degrees, to the last digit.
/// </summary>
public static class BenchActs
{
    /// <summary>The most acts of one attempt that are read.</summary>
    public const int Most = 1000;

    internal const string Calibrate = "calibrate";

    internal static string Clamp(Clamping clamping) => $"clamp {clamping.Cone.Name} {(clamping.SmallEndOutwards ? "out" : "in")} {(clamping.NutRunFree ? "free" : "tight")}";

    internal static string Enter(BalancerSettings s, WeightKind inner, WeightKind outer) => $"set {N(s.RimDistance.Si)} {N(s.RimDiameter.Si)} {N(s.RimWidth.Si)} {Word(inner)} {Word(outer)}";

    internal static string Spin(bool guardDown, bool eyes) => $"spin {(guardDown ? "down" : "up")} {(eyes ? "covered" : "bare")}";

    internal static string Fit(PlaneSide side, WeightKind kind, Mass mass, WheelAngle place) => $"fit {Word(side)} {Word(kind)} {N(mass.Si)} {N(place.Degrees)}";

    internal static string TakeOff(int index) => $"take {index.ToString(CultureInfo.InvariantCulture)}";

    internal static string Turn(Angle turn) => $"turn {N(turn.Degrees)}";

    internal static string Name(BenchFault fault) => $"name {Word(fault)}";

    /// <summary>Does an attempt again.</summary>
    /// <param name="wheel">The wheel.</param>
    /// <param name="acts">What was done, line by line. After a safety stop nothing more is done.</param>
    /// <returns>The bench at the end, or the first line that is no act, placed at <c>acts</c> and its number.</returns>
    /// <source>the project's own form: docs/theory/practice.md (attempts)</source>
    public static Reading<PracticeBench> Replay(PracticeWheel wheel, IReadOnlyList<string> acts)
    {
        ArgumentNullException.ThrowIfNull(wheel);
        ArgumentNullException.ThrowIfNull(acts);
        if (acts.Count > Most)
        {
            return Reading<PracticeBench>.Failed(new Problem("acts", "too-many", $"More than {Most.ToString(CultureInfo.InvariantCulture)} acts are no attempt at one wheel."));
        }

        var bench = PracticeBench.For(wheel);
        for (var i = 0; i < acts.Count && bench.Stop is null; i++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"acts[{i}]");
            if (Do(bench, acts[i].Split(' ')) is not { } next)
            {
                return Reading<PracticeBench>.Failed(new Problem(at, "no-act", $"'{NumberText.Shown(acts[i])}' is no act of the practice bench."));
            }

            if (!next.IsRead)
            {
                return Reading<PracticeBench>.Failed(next.Problem!.At(at));
            }

            bench = next.Value;
        }

        return Reading<PracticeBench>.Of(bench);
    }

    private static Reading<PracticeBench>? Do(PracticeBench bench, string[] words)
    {
        switch (words)
        {
            case ["clamp", var name, "out" or "in", "free" or "tight"] when CentringCones.Set.FirstOrDefault(c => c.Name == name) is { } cone:
                return Reading<PracticeBench>.Of(bench.Clamp(new Clamping(cone, words[2] == "out", words[3] == "free")));
            case ["set", var distance, var diameter, var width, var inner, var outer]
                when Number(distance, 0, 1) is { } d && Number(diameter, 0, 1) is { } di && Number(width, 0, 1) is { } w && Kind(inner) is { } ik && Kind(outer) is { } ok:
                return Reading<PracticeBench>.Of(bench.Enter(new BalancerSettings(Length.FromSi(d), Length.FromSi(di), Length.FromSi(w)), ik, ok));
            case ["spin", "down" or "up", "covered" or "bare"]:
                return bench.Spin(words[1] == "down", words[2] == "covered");
            case ["fit", "inner" or "outer", var kind, var mass, var place] when Kind(kind) is { } k && Number(mass, 0, 1) is { } m && Number(place, 0, 360) is { } p:
                return Reading<PracticeBench>.Of(bench.Fit(words[1] == "inner" ? PlaneSide.Inner : PlaneSide.Outer, k, Mass.FromSi(m), WheelAngle.FromDegrees(p)));
            case ["take", var index] when int.TryParse(index, NumberStyles.None, CultureInfo.InvariantCulture, out var i) && i < bench.Weights.Count:
                return Reading<PracticeBench>.Of(bench.TakeOff(i));
            case ["turn", var turn] when Number(turn, -360, 360) is { } t:
                return Reading<PracticeBench>.Of(bench.TurnTyre(Angle.FromDegrees(t)));
            case [Calibrate]:
                return Reading<PracticeBench>.Of(bench.Calibrate());
            case ["name", var fault] when Enum.GetValues<BenchFault>().Where(f => Word(f) == fault).Select(f => (BenchFault?)f).FirstOrDefault() is { } named:
                return Reading<PracticeBench>.Of(bench.Name(named));
            default:
                return null;
        }
    }

    private static double? Number(string text, double least, double most) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most ? value : null;

    private static WeightKind? Kind(string word) => word switch
    {
        "clip" => WeightKind.Clip,
        "adhesive" => WeightKind.Adhesive,
        _ => null,
    };

    private static string Word(WeightKind kind) => kind == WeightKind.Clip ? "clip" : "adhesive";

    private static string Word(PlaneSide side) => side == PlaneSide.Inner ? "inner" : "outer";

    private static string Word(BenchFault fault) => fault switch
    {
        BenchFault.None => "nothing",
        BenchFault.RimDistance => "rim-distance",
        BenchFault.RimDiameter => "rim-diameter",
        BenchFault.RimWidth => "rim-width",
        BenchFault.TyreOnWheel => "tyre-on-wheel",
        BenchFault.Calibration => "calibration",
    };

    private static string N(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
