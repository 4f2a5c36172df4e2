using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Replacement;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>replace FILE</c>: which tyres may stand in for the placard's, how many are changed and where a new pair goes, and what is renewed with them.</summary>
public static class ReplaceOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new(
        "replace",
        "Which tyres may stand in for the placard's, how many are changed at once, and what is renewed with them.",
        Run)
    {
        TakesFile = true,
        Options = [CheckAnswer.RulesOption, CheckAnswer.ShopRulesOption],
    };

    /// <summary>Reads a body and answers.</summary>
    public static Reading<Answer> Run(FileNode body)
    {
        ArgumentNullException.ThrowIfNull(body);
        var problems = new List<Problem>();
        var visit = VisitFileReader.Read(body, problems);
        if (problems.Count == 0 && visit.Subject.Vehicle.Axles.Count == 0)
        {
            problems.Add(new Problem("vehicle.axles", "missing", "'vehicle.axles' is missing: list the axles from the front, each with its placard."));
        }

        var request = problems.Count > 0 ? null : ReplacementFileReader.Read(body, visit.Subject.Vehicle, problems);
        return request is null ? AnswerJson.Wrong(problems) : Reading<Answer>.Of(Of(visit, request));
    }

    private static Answer Of(VisitFile visit, ReplacementRequest request)
    {
        var subject = visit.Subject;
        var conditions = PressureFileReader.Conditions(visit);
        var judged = request.Candidates.Select(c => StandIn.Judge(subject, c, request, conditions)).OrderBy(s => s.Case).ToList();
        var scope = ReplacementPlaces.Scope(subject, request.NewTread);
        var places = ReplacementPlaces.On(subject, request.Axles);
        var renew = RenewedParts.For(subject, places, judged.Exists(s => s.Case is StandInCase.WithApproval or StandInCase.Ask));
        var cautions = Always(subject).ToList();
        var body = new JsonObject
        {
            ["candidates"] = AnswerJson.List(judged.Select(s => (JsonNode?)Of(s))),
            ["axles"] = AnswerJson.List(request.Axles.Select(a => (JsonNode?)JsonValue.Create(a))),
            ["howMany"] = new JsonObject { ["atLeast"] = scope.HowMany, ["why"] = scope.Why, ["source"] = scope.Source.Text, ["status"] = scope.Source.StatusText },
            ["newPair"] = new JsonObject { ["axle"] = scope.NewPairAxle, ["why"] = scope.NewPairWhy, ["source"] = scope.NewPairSource.Text, ["status"] = scope.NewPairSource.StatusText },
            ["renew"] = AnswerJson.List(renew.Select(r => (JsonNode?)new JsonObject { ["what"] = r.What, ["why"] = r.Why, ["source"] = r.Source.Text, ["status"] = r.Source.StatusText })),
            ["needs"] = AnswerJson.List(scope.Needs.Select(Of)),
            ["cautions"] = AnswerJson.List(cautions),
        };
        var chosen = request.Chosen is { } own ? judged.Find(s => ReferenceEquals(s.Candidate, own)) : null;
        if (chosen is not null)
        {
            body["chosen"] = new JsonObject { ["marking"] = chosen.Candidate.Marking.Typed, ["verdict"] = Word(chosen.Case) };
        }

        return new Answer(judged.TrueForAll(s => s.Case == StandInCase.Refused) || chosen is { Case: StandInCase.Refused }, body, [.. Lines(judged, scope, renew, cautions), .. Lines(chosen)]);
    }

    private static IEnumerable<string> Always(FittedVehicle subject)
    {
        yield return "The vehicle maker's placard and list of sizes come first, then the law of the country; a size that passes here is not thereby approved.";
        yield return "After fitting: pressures cold, balance, fixings in stages to the maker's torque with the wheels on the ground, and the tightening checked again after the first kilometres.";
        if (subject.Rules is null)
        {
            yield return "No rules were chosen (us, uk or eu): only the rules of the trade are applied.";
        }
    }

    private static JsonNode? Of(Need n) => new JsonObject { ["position"] = n.Position, ["what"] = n.What, ["why"] = n.Why };

    private static JsonObject Of(StandIn s)
    {
        var body = new JsonObject
        {
            ["marking"] = s.Candidate.Marking.Typed,
            ["size"] = s.Candidate.Marking.Size.Text,
            ["fromTables"] = s.Candidate.FromTables,
            ["verdict"] = Word(s.Case),
            ["why"] = AnswerJson.List(s.Why),
            ["axles"] = AnswerJson.List(s.Axles.Select(a => (JsonNode?)Of(a, s))),
            ["speedometer"] = s.Speedometer is not { } e ? null : new JsonObject
            {
                ["shownKilometresPerHour"] = e.Shown.KilometresPerHour,
                ["trueKilometresPerHour"] = e.True.KilometresPerHour,
                ["showsPercent"] = ((1 / e.Ratio) - 1) * 100,
            },
            ["odometer"] = s.Speedometer is not { } d ? null : new JsonObject { ["shownKilometres"] = 1000, ["trueKilometres"] = 1000 * d.Ratio },
            ["rims"] = s.Rims is not { } r ? null : new JsonObject
            {
                ["leastInches"] = r.Least.Inches,
                ["mostInches"] = r.Most.Inches,
                ["measuringInches"] = r.Measuring.Inches,
                ["note"] = r.Note,
                ["source"] = r.Source.Text,
                ["status"] = r.Source.StatusText,
            },
        };
        foreach (var (key, value) in AnswerJson.Findings(s.Findings).ToList())
        {
            body[key] = value?.DeepClone();
        }

        body["needs"] = AnswerJson.List(s.Needs.Select(Of));
        body["cautions"] = AnswerJson.List(s.Cautions);
        return body;
    }

    private static JsonObject Of(StandInAxle a, StandIn s)
    {
        var asked = a.Placard.Service;
        return new JsonObject
        {
            ["axle"] = a.Axle,
            ["placard"] = a.Placard.Typed,
            ["circumferencePercent"] = a.Circumference is { } ratio ? (ratio - 1) * 100 : null,
            ["diameterMillimetres"] = s.Candidate.Marking.Size.OverallDiameter?.Millimetres,
            ["placardDiameterMillimetres"] = a.Placard.Size.OverallDiameter?.Millimetres,
            ["mustCarry"] = new JsonObject { ["loadIndexSingle"] = asked.LoadIndexSingle, ["loadIndexDual"] = asked.LoadIndexDual, ["loadRange"] = asked.LoadRange, ["speedSymbol"] = asked.SpeedSymbol, ["extraLoad"] = asked.ExtraLoad, ["highLoad"] = asked.HighLoad },
            ["cold"] = PressureOperation.Of(a.Pressure),
            ["clearance"] = a.Clearance is not { } c ? null : new JsonObject
            {
                ["widthMillimetres"] = c.Width?.Millimetres,
                ["widerMillimetres"] = c.Wider?.Millimetres,
                ["tallerMillimetres"] = c.Taller.Millimetres,
                ["mostWidthMillimetres"] = c.MostWidth?.Millimetres,
                ["mostDiameterMillimetres"] = c.MostDiameter.Millimetres,
                ["source"] = c.Source.Text,
                ["status"] = c.Source.StatusText,
            },
        };
    }

    private static string Word(StandInCase found) => found switch
    {
        StandInCase.AsPlacard => "asPlacard",
        StandInCase.WithApproval => "withApproval",
        StandInCase.Ask => "ask",
        StandInCase.Refused => "refused",
    };

    private static string ForPeople(StandInCase found) => found switch
    {
        StandInCase.AsPlacard => "as the placard",
        StandInCase.WithApproval => "with approval",
        StandInCase.Ask => "ask",
        StandInCase.Refused => "refused",
    };

    private static IEnumerable<string> Lines(StandIn? chosen) => chosen is null ? [] : [$"Chosen: {chosen.Candidate.Marking.Typed}, {ForPeople(chosen.Case)}"];

    private static IEnumerable<string> Lines(List<StandIn> judged, ReplacementScope scope, IReadOnlyList<RenewedPart> renew, List<string> cautions)
    {
        foreach (var s in judged)
        {
            yield return $"{s.Candidate.Marking.Typed}: {ForPeople(s.Case)}";
            foreach (var why in s.Why)
            {
                yield return $"    {why}";
            }

            if (s.Speedometer is { Ratio: not 1 } e)
            {
                yield return $"    Shown {e.Shown.Text("km/h", 0)} is {e.True.Text("km/h", 1)}; 1000 km on the odometer are {Quantity.Number(1000 * e.Ratio, 0)} km.";
            }

            foreach (var a in s.Axles)
            {
                var size = a.Circumference is { } ratio ? string.Create(CultureInfo.InvariantCulture, $"circumference {Quantity.Number((ratio - 1) * 100, 2)} %, ") : "";
                yield return $"    axle {a.Axle.ToString(CultureInfo.InvariantCulture)}: {size}cold {(a.Pressure is { } p ? $"{p.Pressure.Text("kPa", 0)} ({p.Pressure.Text("psi", 0)}) [{p.Source.ForPeople}]" : "not known")}";
            }

            yield return s.Rims is { } rims
                ? string.Create(CultureInfo.InvariantCulture, $"    rims {rims.Least.Inches:0.0#} to {rims.Most.Inches:0.0#} in [{rims.Source.ForPeople}]")
                : "    rims: ask the tyre's maker";
            if (s.Case != StandInCase.Refused)
            {
                foreach (var line in AnswerJson.Lines([.. s.Findings.Where(f => f.Category != Category.None)]))
                {
                    yield return $"    {line}";
                }

                foreach (var caution in s.Cautions)
                {
                    yield return $"    Caution: {caution}";
                }
            }
        }

        yield return $"Change at least {scope.HowMany switch { "all" => "all", "one" => "one", _ => "a pair" }}: {scope.Why} [{scope.Source.ForPeople}]";
        yield return $"A new pair: {scope.NewPairWhy} [{scope.NewPairSource.ForPeople}]";
        foreach (var part in renew)
        {
            yield return $"With it: {part.What}. {part.Why} [{part.Source.ForPeople}]";
        }

        foreach (var need in scope.Needs)
        {
            yield return $"needed    {need.Position ?? "vehicle"}: {need.What} ({need.Why})";
        }

        foreach (var caution in cautions)
        {
            yield return $"Caution: {caution}";
        }
    }
}
