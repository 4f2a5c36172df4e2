using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Engine.Wear;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Wear.Oracle;

/// <summary>
/// The integrals over level, sizes and scatter by drawing: for each form, treads are drawn from the tables and the readings' likelihood is taken with
/// the single readings' own scatter alone. No covariance and no closed form.
/// </summary>
public sealed class WearOracleTests
{
    private const int Draws = 400_000;

    [Theory]
    [InlineData(5.4, 5.0, 4.0)]
    [InlineData(4.4, 5.4, 4.6)]
    [InlineData(5.3, 4.3, 5.1)]
    [InlineData(5.0, 5.1, 5.2)]
    public void Probabilities_of_one_depth_a_groove_are_those_of_drawn_treads(double inner, double centre, double outer)
    {
        double[] depths = [inner, centre, outer];
        var wear = Read(new TreadDepths(Depths(inner), Depths(centre), Depths(outer)));
        var drawn = Drawn((random, form) => Groove(random, form, depths));
        foreach (var pattern in wear.Patterns)
        {
            pattern.Probability.ShouldBe(drawn[pattern.Pattern.Word()], 0.015, pattern.Pattern.Word());
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(-0.6)]
    public void Probabilities_of_rib_edges_alone_are_those_of_drawn_ribs(double difference)
    {
        var wear = Read(new TreadDepths([], [], []) { Ribs = [new RibEdges(TreadPlace.Centre, Length.FromMillimetres(5 + difference), Length.FromMillimetres(5))] });
        var drawn = Drawn((random, form) => (difference - RibOf(random, form), Math.Sqrt(Square("edge") + (2 * (Square("gauge") + (Step(difference) * Step(difference) / 12))))) switch { var (left, sd) => Bell(left, sd) });
        foreach (var pattern in wear.Patterns)
        {
            pattern.Probability.ShouldBe(drawn[pattern.Pattern.Word()], 0.015, pattern.Pattern.Word());
        }
    }

    [Fact]
    public void Nothing_but_the_cause_parts_a_pattern_from_what_its_table_says()
    {
        // Without axle, pressure or another tyre the causes of a pattern are the table's shares.
        var wear = Read(new TreadDepths(Depths(3), Depths(5), Depths(3.1)));
        foreach (var cause in wear.Of(WearPattern.BothShoulders).Causes)
        {
            cause.Probability.ShouldBe(WearData.Number(WearData.Shares.Single(s => s["pattern"] == "both-shoulders" && s["cause"] == cause.Cause)["share"]), 1e-9);
        }
    }

    [Fact]
    public void Context_and_the_other_tyre_are_weighed_as_a_direct_count_weighs_them()
    {
        var worn = new TreadDepths(Depths(3.6), Depths(5), Depths(3.9));
        var subject = Bay.Four() with { };
        subject = subject.With("1L", a => a with { Tread = worn, Pressure = new PressureReading(GaugePressure.FromKilopascals(180), null, false) }).With("1R", a => a with { Tread = new TreadDepths(Depths(4.1), Depths(5), Depths(4.2)) });
        var wear = WearReading.Of(subject).Single(w => w.Position == Bay.At("1L"));
        var alone = Logs(Read(worn));
        var partner = Read(subject.At(Bay.At("1R"))!.Tread!);
        var weights = new Dictionary<string, double>(StringComparer.Ordinal);
        var before = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var share in WearData.Shares)
        {
            var prior = WearData.Forms.Single(f => f.Pattern == share["pattern"] && f.Form == share["form"]).Prior;
            var cause = WearData.Causes.Single(c => c["cause"] == share["cause"]);
            var context = N("pressure_low") * N("steered") * N("driven") * (1 - N("dual"));
            var alike = FormPart(partner, share["pattern"], share["form"]) / prior;
            var beside = WearData.Number(share["share"]) * context * ((N("alike") * alike) + (1 - N("alike")));
            weights[share["pattern"]] = weights.GetValueOrDefault(share["pattern"]) + (alone[(share["pattern"], share["form"])] * beside);
            before[share["pattern"]] = before.GetValueOrDefault(share["pattern"]) + (prior * beside);

            double N(string column) => WearData.Number(cause[column]);
        }

        foreach (var pattern in wear.Patterns)
        {
            pattern.Probability.ShouldBe(((1 - Doubt) * weights[pattern.Pattern.Word()] / weights.Values.Sum()) + (Doubt * before[pattern.Pattern.Word()] / before.Values.Sum()), 1e-9, pattern.Pattern.Word());
        }
    }

    /// <summary>Prior times likelihood of each form by the depths alone.</summary>
    private static Dictionary<(string, string), double> Logs(TyreWear wear) => WearData.Forms.ToDictionary(f => (f.Pattern, f.Form), f => FormPart(wear, f.Pattern, f.Form));

    /// <summary>By the depths of one tyre alone, with what is kept of the priors taken off again.</summary>
    private static double FormPart(TyreWear wear, string pattern, string form)
    {
        var reading = wear.Patterns.Single(p => p.Pattern.Word() == pattern);
        var told = reading.Probability * (reading.Forms.Count == 0 ? 1 : reading.Forms.Single(f => f.Form == form).Probability);
        return (told - (Doubt * WearData.Forms.Single(f => f.Pattern == pattern && f.Form == form).Prior)) / (1 - Doubt);
    }

    private static double Doubt => WearData.Figure("doubt") / 100;

    private static Dictionary<string, double> Drawn(Func<Random, (string Pattern, string Form, double Prior), double> likelihood)
    {
        var random = new Random(7);
        var sums = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var form in WearData.Forms)
        {
            var sum = 0.0;
            for (var i = 0; i < Draws; i++)
            {
                sum += likelihood(random, form);
            }

            sums[form.Pattern] = sums.GetValueOrDefault(form.Pattern) + (form.Prior * sum / Draws);
        }

        var whole = sums.Values.Sum();
        return sums.ToDictionary(s => s.Key, s => s.Value / whole, StringComparer.Ordinal);
    }

    /// <summary>The likelihood of three grooves of one place, given a drawn tread; the level is integrated over the line.</summary>
    private static double Groove(Random random, (string Pattern, string Form, double Prior) form, double[] depths)
    {
        var tilt = Bell(random, Math.Sqrt(Square("tilt") + (form.Pattern == "feather" ? Square("feather-tilt") : 0)) / 2);
        var crown = Bell(random, WearData.Figure("crown"));
        double[] mean = [-tilt, crown, tilt];
        var variance = Square("local") + Square("gauge") + (0.01 / 12);
        if (form.Pattern is not ("even" or "feather"))
        {
            var (_, m, sd) = Pick(random, WearData.Sizes(form.Pattern));
            var size = m + Bell(random, sd);
            double[] shape = form.Pattern switch
            {
                "centre" => [0, -1, 0],
                "both-shoulders" => [-1, 0, -1],
                "one-shoulder" => random.NextDouble() < WearData.Figure("slope-share") / 100 ? [-1, -WearData.Figure("slope-centre") / 100, 0] : [-1, -WearData.Figure("shoulder-centre") / 100, 0],
                _ => [0, 0, 0],
            };
            if (form.Form == "outer")
            {
                Array.Reverse(shape);
            }

            switch (form.Pattern)
            {
                case "cups":
                    // A dip over the whole width does not show at one place; at one shoulder it does.
                    var side = random.Next(3);
                    mean[0] += side == 0 ? size : 0;
                    mean[2] += side == 2 ? size : 0;
                    break;
                case "diagonal":
                    Diagonal(random, mean, sd);
                    break;
                case "other":
                    variance += sd * sd;
                    break;
                case "heel-and-toe":
                    variance += Square("block-scatter");
                    break;
                default:
                    for (var i = 0; i < 3; i++)
                    {
                        mean[i] += size * shape[i];
                    }

                    break;
            }
        }

        // The level is anything: with one variance for all, its integral leaves the spread about the mean.
        var left = depths.Zip(mean, (d, m) => d - m).ToArray();
        var average = left.Average();
        var squares = left.Sum(l => (l - average) * (l - average));
        return Math.Exp(-squares / (2 * variance)) / variance;
    }

    /// <summary>Three places on one smooth curve, 60° apart on it: a step from each to the next by the curve's correlation.</summary>
    private static void Diagonal(Random random, double[] mean, double sd)
    {
        var length = WearData.Figure("cup-length");
        var shift = WearData.Figure("diagonal-shift");
        var near = Math.Exp(-0.5 * Math.Pow(shift / length, 2));
        var far = Math.Exp(-0.5 * Math.Pow(2 * shift / length, 2));
        var first = Bell(random, sd);
        var second = (near * first) + Bell(random, sd * Math.Sqrt(1 - (near * near)));

        // The third given the first two, by the plane through them.
        var (a, b) = ((far - (near * near)) / (1 - (near * near)), (near - (near * far)) / (1 - (near * near)));
        var third = (a * first) + (b * second) + Bell(random, sd * Math.Sqrt(Math.Max(0, 1 - (a * far) - (b * near))));
        mean[0] += first;
        mean[1] += second;
        mean[2] += third;
    }

    private static double RibOf(Random random, (string Pattern, string Form, double Prior) form)
    {
        if (form.Pattern is not ("feather" or "other"))
        {
            return 0;
        }

        var (_, mean, sd) = Pick(random, WearData.Sizes(form.Pattern));
        return (form.Form == "outer-high" ? -1 : 1) * (mean + Bell(random, sd));
    }

    private static double Step(double difference) => Math.Abs(difference) == 0.5 ? 0.5 : 0.2;

    private static double Square(string key) => WearData.Figure(key) * WearData.Figure(key);

    private static double Bell(double left, double sd) => Math.Exp(-left * left / (2 * sd * sd)) / sd;

    private static double Bell(Random random, double sd) => sd * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static (double Weight, double Mean, double Sd) Pick(Random random, IReadOnlyList<(double Weight, double Mean, double Sd)> parts)
    {
        var left = random.NextDouble();
        return parts.FirstOrDefault(p => (left -= p.Weight) < 0, parts[^1]);
    }

    private static TyreWear Read(TreadDepths tread) => WearReading.Of(new FittedVehicle(new Vehicle(), [Bay.On("1L") with { Tread = tread }], null, null))[0];

    private static Length[] Depths(double depth) => [Length.FromMillimetres(depth)];
}
