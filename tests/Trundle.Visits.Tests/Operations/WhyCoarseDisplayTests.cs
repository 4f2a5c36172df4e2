using System.Numerics;
using System.Text.Json.Nodes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>
/// Two hundred invented wheels with a wrong rim distance on a balancer that shows whole steps and does not tell so: by the lever law alone, apart from the
/// engine. The interval must hold the true distance about as often as it says, and the probabilities must be no more sure than they are right.
/// </summary>
public class WhyCoarseDisplayTests
{
    private const int Cases = 200;
    private const double Width = 7 * 25.4;

    [Theory]
    [InlineData("g", 5)]
    [InlineData("oz", 0.25)]
    public void The_interval_of_a_coarse_display_holds_what_it_says(string unit, double step)
    {
        var (inside, estimates, first) = (0, 0, 0);
        var sure = 0.0;
        for (var seed = 0; seed < Cases; seed++)
        {
            var random = new Random(seed);
            var distance = 60 + (new[] { -25, -15, 15, 25 })[random.Next(4)];
            var body = BalanceWhyOperation.Operation.Run(FileNode.Parse(Wheel(random, distance, step, unit), "body").Value).Value.Body;
            var explanations = body["explanations"]!.AsArray();
            var estimate = explanations.First(e => e!["cause"]!.GetValue<string>() == "rim-distance")!["estimate"];
            if (estimate is not null)
            {
                estimates++;
                inside += distance >= estimate["low"]!.GetValue<double>() && distance <= estimate["high"]!.GetValue<double>() ? 1 : 0;
            }

            first += explanations[0]!["cause"]!.GetValue<string>() == "rim-distance" ? 1 : 0;
            sure += explanations[0]!["probability"]!.GetValue<double>();
        }

        // Nine tenths are asked; four standard errors of two hundred are 0.085.
        ((double)inside / estimates).ShouldBeGreaterThan(0.815, $"{inside} of {estimates}");
        (sure / Cases).ShouldBeLessThan(((double)first / Cases) + 0.15, $"{first} right");
    }

    private static string Wheel(Random random, double trueDistance, double step, string unit)
    {
        const double Grams = 28.349523125;
        var size = unit == "oz" ? step * Grams : step;
        Complex[] need = [Draw(15, 50), Draw(15, 50)];
        var spins = new JsonArray();
        var count = random.Next(2, 4);
        for (var s = 0; s < count; s++)
        {
            var (display, fitted) = (new JsonObject(), new JsonArray());
            Complex[] shown = [need[0] + Noise(), need[1] + Noise()];
            for (var p = 0; p < 2; p++)
            {
                var plane = p == 0 ? "inner" : "outer";
                var steps = Math.Round(shown[p].Magnitude / size);
                var angle = (Math.Round(shown[p].Phase * 180 / Math.PI) + 360) % 360;
                var mass = FormattableString.Invariant($"{steps * step:0.##} {unit}");
                display[plane] = steps == 0 ? new JsonObject { ["mass"] = mass } : new JsonObject { ["mass"] = mass, ["angle"] = angle };
                if (steps > 0 && s < count - 1)
                {
                    // A weight at the true flange does in the planes that the balancer reckons with what the lever law says.
                    fitted.Add(new JsonObject { ["plane"] = plane, ["mass"] = mass, ["angle"] = angle });
                    var weight = Complex.FromPolarCoordinates(steps * size, angle * Math.PI / 180);
                    var along = (trueDistance + (p * Width) - 60) / Width;
                    need[0] -= weight * (1 - along);
                    need[1] -= weight * along;
                }
            }

            spins.Add(new JsonObject { ["display"] = display, ["fittedAfter"] = fitted });
        }

        return new JsonObject
        {
            ["entered"] = new JsonObject { ["rimDistance"] = "60 mm", ["rimDiameter"] = "16 in", ["rimWidth"] = "7 in" },
            ["machine"] = new JsonObject { ["repeatability"] = "0.5 g", ["transducers"] = new JsonArray("-120 mm", "-280 mm") },
            ["wheel"] = new JsonObject { ["mass"] = "18 kg" },
            ["spins"] = spins,
        }.ToJsonString();

        Complex Draw(double least, double most) => Complex.FromPolarCoordinates(least + ((most - least) * random.NextDouble()), Math.Tau * random.NextDouble());
        Complex Noise() => Complex.FromPolarCoordinates(0.5 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())), Math.Tau * random.NextDouble());
    }
}
