using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Wear;

/// <summary>What is measured of a drawn tyre.</summary>
/// <param name="Places">Places around.</param>
/// <param name="Edges">Three ribs and three blocks at their edges too.</param>
/// <param name="Context">Axle, pressure and the tyre at the other side are known too.</param>
internal sealed record WearPlan(int Places, bool Edges, bool Context);

/// <summary>
/// One invented worn tyre: pattern, cause and sizes drawn from the tables, the tread made as a surface (dips as waves and hollows, a flat place as a
/// flat place, not as the bells that the engine takes them for), read with a gauge of 0.1 mm.
/// </summary>
internal sealed class WearCase
{
    private WearCase(string pattern, string cause, FittedVehicle subject) => (Pattern, Cause, Subject) = (pattern, cause, subject);

    public string Pattern { get; }

    public string Cause { get; }

    public FittedVehicle Subject { get; }

    public static WearCase Draw(int seed, WearPlan plan, bool allAlikeOften = false)
    {
        var random = new Random(seed);
        var form = allAlikeOften ? AnyPattern(random) : Pick(random, WearData.Forms, f => f.Prior);
        var share = Pick(random, [.. WearData.Shares.Where(s => s["pattern"] == form.Pattern && s["form"] == form.Form)], s => WearData.Number(s["share"]));
        var cause = WearData.Causes.Single(c => c["cause"] == share["cause"]);
        var tread = Tread(random, form, plan);
        if (!plan.Context)
        {
            return new WearCase(form.Pattern, share["cause"], new FittedVehicle(new Vehicle(), [Bay.On("1L") with { Tread = tread }], null, null));
        }

        var dual = Chance(random, cause, "dual");
        var axle = Bay.Axle(steered: Chance(random, cause, "steered"), driven: Chance(random, cause, "driven")) with { Dual = dual };
        var air = Pick(random, [("pressure_low", 190.0), ("pressure_right", 230.0), ("pressure_high", 310.0)], p => WearData.Number(cause[p.Item1])).Item2;
        var partner = Tread(random, Chance(random, cause, "alike") ? form : Pick(random, WearData.Forms, f => f.Prior), plan);
        var (left, right) = dual ? ("1Lo", "1Ro") : ("1L", "1R");
        return new WearCase(form.Pattern, share["cause"], new FittedVehicle(
            new Vehicle { Axles = [axle] },
            [Bay.On(left) with { Tread = tread, Pressure = new PressureReading(GaugePressure.FromKilopascals(air), null, false) }, Bay.On(right) with { Tread = partner }],
            null,
            null));
    }

    private static (string Pattern, string Form, double Prior) AnyPattern(Random random)
    {
        var patterns = WearData.Forms.GroupBy(f => f.Pattern).ToList();
        return Pick(random, [.. patterns[random.Next(patterns.Count)]], f => f.Prior);
    }

    private static TreadDepths Tread(Random random, (string Pattern, string Form, double Prior) form, WearPlan plan)
    {
        var gauge = WearData.Figure("gauge");
        var surface = Surface(random, form, plan.Places);
        var local = WearData.Figure("local");
        var round = Enumerable.Range(0, plan.Places).Select(_ => Bell(random, WearData.Figure("round"))).ToArray();
        var level = 3 + (4 * random.NextDouble());
        var tilt = Bell(random, WearData.Figure("tilt") / 2);
        var crown = Bell(random, WearData.Figure("crown"));
        var tread = new TreadDepths(Row(-1), Row(0), Row(1));
        if (!plan.Edges)
        {
            return tread;
        }

        var edge = WearData.Figure("edge");
        return tread with
        {
            Ribs = [.. new[] { -1, 0, 1 }.Select(x => surface.Rib(x) + Bell(random, edge)).Select((d, i) => new RibEdges((TreadPlace)i, Read(level + (d / 2)), Read(level - (d / 2))))],
            Blocks = [.. new[] { -1, 0, 1 }.Select(x => surface.Block(x) + Bell(random, edge)).Select((d, i) => new BlockEdges((TreadPlace)i, Read(level + (d / 2)), Read(level - (d / 2))))],
        };

        Length[] Row(int x) => [.. Enumerable.Range(0, plan.Places).Select(i => Read(level + (x * tilt) + (x == 0 ? crown : 0) + round[i] + Bell(random, local) + surface.At(x, 360.0 * i / plan.Places)))];

        Length Read(double depth) => Length.FromMillimetres(Math.Round(Math.Max(0, depth + Bell(random, gauge)), 1));
    }

    private sealed record Shape(Func<int, double, double> At, Func<int, double> Rib, Func<int, double> Block);

    private static Shape Surface(Random random, (string Pattern, string Form, double Prior) form, int places)
    {
        static double None(int x) => 0;
        var size = form.Pattern == "even" ? 0 : Size(random, form.Pattern);
        var slope = WearData.Figure("rib-slope") / 100;
        var way = form.Form is "inner" or "inner-high" ? 1 : -1;
        switch (form.Pattern)
        {
            case "even":
                return new Shape((_, _) => 0, None, None);
            case "centre":
                return new Shape((x, _) => x == 0 ? -size : 0, x => -x * slope * size, None);
            case "both-shoulders":
                return new Shape((x, _) => x == 0 ? 0 : -size, x => x * slope * size, None);
            case "one-shoulder":
                var middle = random.NextDouble() < WearData.Figure("slope-share") / 100 ? WearData.Figure("slope-centre") / 100 : WearData.Figure("shoulder-centre") / 100;
                return new Shape((x, _) => x == 0 ? -size * middle : x == -way ? -size : 0, x => -way * slope * size * (x == -way ? 1 - middle : x == way ? middle : 0), None);
            case "feather":
                var tilt = Bell(random, WearData.Figure("feather-tilt") / 2);
                return new Shape((x, _) => x * tilt, _ => way * size, None);
            case "heel-and-toe":
                var turn = random.Next(2) == 0 ? -1 : 1;
                return new Shape((_, _) => Bell(random, WearData.Figure("block-scatter")), None, _ => turn * size);
            case "cups":
                var side = random.Next(3) - 1;
                var (waves, start) = (random.Next(4, 10), 360 * random.NextDouble());
                return new Shape((x, at) => side != 0 && x != side ? 0 : size * Math.Sqrt(2) * Math.Cos(waves * Math.PI * (at + start) / 180), None, _ => Bell(random, Math.Abs(size) / 2));
            case "diagonal":
                var (from, lean) = (360 * random.NextDouble(), random.Next(2) == 0 ? -1 : 1);
                var dips = random.Next(2, 5);
                return new Shape((x, at) => size * Math.Sqrt(2) * Math.Cos(dips * Math.PI * (at + from - (lean * WearData.Figure("diagonal-shift") * x)) / 180), None, _ => Bell(random, Math.Abs(size) / 2));
            case "flat-spot":
                var met = random.NextDouble() < WearData.Figure("flat-met") / 100;
                var flat = 360.0 * random.Next(places) / places;
                return new Shape((_, at) => met && at == flat ? -size : 0, None, None);
            default:
                return new Shape((_, _) => Bell(random, size), _ => Bell(random, size), _ => Bell(random, size));
        }
    }

    private static double Size(Random random, string pattern)
    {
        var (_, mean, sd) = Pick(random, WearData.Sizes(pattern), s => s.Weight);
        return mean == 0 ? sd : mean + Bell(random, sd);
    }

    private static bool Chance(Random random, Dictionary<string, string> cause, string column) => random.NextDouble() < WearData.Number(cause[column]);

    private static T Pick<T>(Random random, IReadOnlyList<T> from, Func<T, double> weight)
    {
        var left = random.NextDouble() * from.Sum(weight);
        foreach (var item in from)
        {
            left -= weight(item);
            if (left < 0)
            {
                return item;
            }
        }

        return from[^1];
    }

    private static double Bell(Random random, double sd) => sd * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
