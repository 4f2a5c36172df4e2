using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>A rotation looked ahead, with the interval and the limit that it rests on.</summary>
/// <param name="Ahead">Schedule and distances.</param>
/// <param name="Interval">Distance between rotations, and whose it is.</param>
/// <param name="ReplaceAt">Depth at which a tyre is replaced, and whose it is.</param>
/// <param name="Odometer">The distance run by now, or null.</param>
public sealed record RotationForecast(RotationAhead Ahead, Limit Interval, Limit ReplaceAt, Length? Odometer)
{
    /// <summary>What stands beside the distances.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "Looking ahead takes the wear rates as steady; measure again at each rotation. Rotating makes the set wear evenly and fall due together: it does not make rubber.",
    ];

    /// <summary>Looks ahead; a problem names what the file lacks.</summary>
    public static Reading<RotationForecast> For(RotationPlan plan, FittedVehicle subject, RotationRequest request)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(request);
        var positions = subject.Fitted.Select(a => a.Position).Where(p => !p.IsSpare || plan.Chosen?.Moves.Any(m => m.From.IsSpare) == true).ToList();
        var missing = positions.Where(p => !p.IsSpare && !request.WearPerThousandKilometres.ContainsKey(p)).ToList();
        if (missing.Count > 0)
        {
            return Reading<RotationForecast>.Failed(new Problem("rotation.wear", "wear-rate-missing",
                $"Looking ahead needs the tread lost per 1 000 km at every position; there is none for {string.Join(", ", missing)}. Give rotation.wear, for example {{\"1L\": \"0.12 mm\"}}."));
        }

        var depths = new Dictionary<Position, Length>();
        foreach (var position in positions)
        {
            var least = subject.At(position)!.Tread?.All.Select(t => t.Depth).ToList() ?? [];
            if (least.Count == 0)
            {
                var index = subject.Fitted.ToList().FindIndex(a => a.Position == position);
                return Reading<RotationForecast>.Failed(new Problem(string.Create(CultureInfo.InvariantCulture, $"fitted[{index}].tread"), "tread-missing", $"Looking ahead needs the tread depth of every tyre; there is none for {position}."));
            }

            depths[position] = least.Min();
        }

        var interval = request.Interval is { } given
            ? new Limit(Amount.Of(given, "km", 0), Source.Entered("interval, as entered"))
            : Figures.Of("rotation.interval").Limit(0);
        var replaceAt = request.ReplaceAt is { } depth
            ? new Limit(Amount.Of(depth, "mm", 1), Source.Entered("depth for replacement, as entered"))
            : positions.Select(p => TreadLimits.Strictest(subject, p)).MaxBy(l => l.Compared)!.Limit;
        var outlook = new WearOutlook(
            depths,
            request.WearPerThousandKilometres,
            Length.FromKilometres(Quantity.Of<Length>(interval.Amount.Value!.Value, interval.Amount.Unit).Kilometres),
            Quantity.Of<Length>(replaceAt.Amount.Value!.Value, replaceAt.Amount.Unit))
        {
            ReplaceNow = plan.KeptOut.Any(k => k.Part == InspectedPart.Tyre && k.ReplaceFirst && positions.Contains(k.Position)),
        };
        var pattern = plan.Chosen?.Pattern ?? new RotationPattern("none", [], [], "none", false, Source.CommonPractice);
        return Reading<RotationForecast>.Of(new RotationForecast(RotationAhead.For(pattern, outlook, request.Ahead!.Value), interval, replaceAt, subject.Vehicle.Odometer));
    }

    /// <summary>Writes the contract's keys into an answer.</summary>
    public void WriteTo(JsonObject body)
    {
        ArgumentNullException.ThrowIfNull(body);
        body["schedule"] = AnswerJson.List(Ahead.Schedule.Select(s => (JsonNode?)new JsonObject
        {
            ["afterKilometres"] = s.After.Kilometres,
            ["odometerKilometres"] = Odometer is { } o ? o.Kilometres + s.After.Kilometres : null,
            ["depths"] = Depths(s.Depths),
        }));
        body["firstReplacementKilometres"] = Ahead.FirstReplacement?.Kilometres;
        body["unrotatedKilometres"] = Ahead.Unrotated?.Kilometres;
        body["leftAtFirstReplacement"] = Depths(Ahead.AtFirstReplacement);
        body["interval"] = AnswerJson.Of(Interval);
        body["replaceAt"] = AnswerJson.Of(ReplaceAt);
    }

    /// <summary>For a person.</summary>
    public IEnumerable<string> Lines
    {
        get
        {
            yield return $"Every {Interval.Amount.Text} [{Interval.Source.ForPeople}], replaced at {ReplaceAt.Amount.Text} [{ReplaceAt.Source.ForPeople}]:";
            foreach (var s in Ahead.Schedule)
            {
                yield return $"  after {s.After.Text("km", 0),10}  {string.Join("  ", s.Depths.Select(d => $"{d.Key} {d.Value.Text("mm", 1)}"))}";
            }

            yield return $"First replacement after {Ahead.FirstReplacement?.Text("km", 0) ?? "no distance that can be told"}; without rotation {Ahead.Unrotated?.Text("km", 0) ?? "no distance that can be told"}.";
        }
    }

    private static JsonArray Depths(IReadOnlyDictionary<Position, Length> depths) =>
        AnswerJson.List(depths.Select(d => (JsonNode?)new JsonObject { ["position"] = d.Key.ToString(), ["depthMillimetres"] = d.Value.Millimetres }));
}
