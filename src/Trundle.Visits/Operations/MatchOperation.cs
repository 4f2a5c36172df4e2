using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Uniformity;
using Trundle.Engine.Uniformity.Matching;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Operations;

/// <summary><c>match FILE</c>: which tyre goes on which wheel and at what turn, so that their first harmonics cancel.</summary>
public static class MatchOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("match", "Which tyre on which wheel and at what turn, so that force variation, runout or unbalance cancel.", Run) { TakesFile = true };

    private static Reading<Answer> Run(FileNode body) => Solved(body).Then(solved => Reading<Answer>.Of(solved.Answer()));

    /// <summary>A file read and matched: from it come the answer and its drawings.</summary>
    private static Reading<MatchAnswer> Solved(FileNode body)
    {
        var problems = new List<Problem>();
        var file = MatchFileReader.Read(body, problems);
        if (file is null)
        {
            return Wrong(problems);
        }

        return file.On switch
        {
            MatchQuantity.ForceVariation => Solve(file, new MatchUnit("force", "N", 1), ForceOf(file)),
            MatchQuantity.Runout => Solve(file, new MatchUnit("runout", "mm", 3), i => i.Runout),
            MatchQuantity.Unbalance => Solve(file, new MatchUnit("unbalance", "g·mm", 0), i => i.Unbalance),
        };
    }

    private static Func<MatchItem, MeasuredPart<Force>?> ForceOf(MatchFile file) => i =>
        i.Force ?? (i.Runout is { } r && file.Stiffness is { } k ? new MeasuredPart<Force>([RadialStiffness.ForceOf(r.Planes[0], k.Stiffness)], r.PlaceKnown) : null);

    private static Reading<MatchAnswer> Wrong(List<Problem> problems) => Reading<MatchAnswer>.Failed(problems[0]);

    private static Reading<MatchAnswer> Solve<T>(MatchFile file, MatchUnit unit, Func<MatchItem, MeasuredPart<T>?> of) where T : struct, IQuantity<T>
    {
        var problems = file.Root.Problems;
        var limit = MatchFileReader.MakerLimit<T>(file.Root, unit.Symbol, unit.Decimals);
        PartingOutcome<T>.Parted? parts = null;
        MatchProblem<T>? problem;
        if (file.FromMountings)
        {
            if (MatchFileReader.Mountings<T>(file, unit.Symbol) is not { } m)
            {
                return Wrong(problems);
            }

            var refused = MountingParts.Part(m.Mountings, m.Repeatability).Match<Problem?>(
                p =>
                {
                    parts = p;
                    return null;
                },
                MatchFileReader.TooSmall,
                r => MatchFileReader.WithinRepeatability(r.Difference.Text(unit.Symbol, unit.Decimals + 1)));
            if (refused is not null)
            {
                return Reading<MatchAnswer>.Failed(refused.At("mountings"));
            }

            problem = new MatchProblem<T>
            {
                Tyres = [new MatchPart<T>("1", [parts!.Tyre.Turned(m.Mountings[^1].Turn)], true) { SitsOn = 0 }],
                Wheels = [new MatchPart<T>("1", [parts.Wheel], true)],
                Aim = file.Aim,
                TurnStep = file.TurnStep,
            };
            file = file with { Tyres = [file.Wheels[0] with { SitsOn = "1" }] };
        }
        else
        {
            problem = MatchFileReader.Problem(file, unit.Symbol, unit.Key, of);
        }

        if (problem is null || problems.Count > 0)
        {
            return Wrong(problems);
        }

        return SetMatch.Solve(problem).Match(
            matched => Reading<MatchAnswer>.Of(new MatchAnswer<T>(file, problem, matched, unit, limit, parts)),
            none => Reading<MatchAnswer>.Failed(new Problem("tyres", "no-complete-pairing",
                $"What may go on what leaves some without a partner: at most {Quantity.Number(none.Most, 0)} of {Quantity.Number(Math.Min(problem.Tyres.Count, problem.Wheels.Count), 0)} pairs can be made. Look at 'mayGoOn'.")));
    }
}

/// <summary>How a set's quantity is written.</summary>
/// <param name="Key">Its key in the file.</param>
/// <param name="Symbol">Its unit.</param>
/// <param name="Decimals">Decimals for people.</param>
internal sealed record MatchUnit(string Key, string Symbol, int Decimals);

/// <summary>A matching, whatever its quantity.</summary>
internal abstract record MatchAnswer
{
    /// <summary>For people and for programs.</summary>
    public abstract Answer Answer();

    /// <summary>Each pair whose places are known, before and after the turn; named tyre on wheel.</summary>
    public abstract IReadOnlyList<Drawing> Drawings();
}

/// <summary>The answer of a matching.</summary>
internal sealed record MatchAnswer<T>(MatchFile Given, MatchProblem<T> Problem, MatchOutcome<T>.Matched Matched, MatchUnit Unit, Limit? Limit, PartingOutcome<T>.Parted? Parts)
    : MatchAnswer where T : struct, IQuantity<T>
{
    private double In(T quantity) => quantity.In(Unit.Symbol);

    private string Text(T quantity) => quantity.Text(Unit.Symbol, Unit.Decimals);

    public override Answer Answer()
    {
        var over = Matched.Pairs.Any(p => Within(p) == false);
        var cautions = Cautions();
        var json = new JsonObject
        {
            ["pairs"] = AnswerJson.List(Matched.Pairs.Select(p => (JsonNode?)Json(p))),
            ["objective"] = new JsonObject
            {
                ["aim"] = Problem.Aim == MatchAim.Sum ? "sum" : "worst",
                ["worst"] = In(Matched.Worst),
                ["sum"] = In(Matched.Sum),
                ["unit"] = Unit.Symbol,
                ["chargePerChange"] = Problem.KeepUnlessGain is { } k ? In(k) : null,
            },
            ["provenOptimal"] = Matched.ProvenOptimal,
            ["on"] = Given.On switch { MatchQuantity.ForceVariation => "forceVariation", MatchQuantity.Runout => "runout", MatchQuantity.Unbalance => "unbalance" },
            ["unit"] = Unit.Symbol,
            ["amplitude"] = Given.On == MatchQuantity.Unbalance ? null : Given.PeakToPeak ? "peakToPeak" : "zeroToPeak",
            ["withinLimit"] = Limit is null ? null : !over,
            ["limit"] = AnswerJson.Of(Limit),
            ["tyresLeftOut"] = AnswerJson.List(Matched.TyresLeftOut.Select(t => Problem.Tyres[t].Name)),
            ["wheelsLeftOut"] = AnswerJson.List(Matched.WheelsLeftOut.Select(w => Problem.Wheels[w].Name)),
        };
        if (Parts is { } parts)
        {
            json["parts"] = new JsonObject
            {
                ["tyre"] = Vector(parts.Tyre),
                ["wheel"] = Vector(parts.Wheel),
                ["noiseGain"] = parts.NoiseGain,
                ["misfit"] = In(parts.Misfit),
                ["standardError"] = parts.StandardError is { } e ? In(e) : null,
                ["unit"] = Unit.Symbol,
            };
        }

        if (Given.Stiffness is { } stiffness && Given.On == MatchQuantity.ForceVariation)
        {
            json["radialStiffness"] = new JsonObject
            {
                ["newtonsPerMillimetre"] = stiffness.Stiffness.NewtonsPerMillimetre,
                ["source"] = stiffness.Source.Text,
                ["status"] = stiffness.Source.StatusText,
            };
        }

        if (Given.Tyres.Any(t => t.Lateral is not null))
        {
            json["lateralForces"] = AnswerJson.List(Given.Tyres.Where(t => t.Lateral is not null).Select(t => (JsonNode?)new JsonObject
            {
                ["tyre"] = t.Name,
                ["conicityNewtons"] = t.Lateral!.Conicity.Newtons,
                ["plySteerNewtons"] = t.Lateral.PlySteer.Newtons,
            }));
        }

        json["cautions"] = AnswerJson.List(cautions);
        return new Answer(over, json, [.. Lines(cautions)]) { Drawings = Drawings };
    }

    public override IReadOnlyList<Drawing> Drawings() =>
    [
        .. Matched.Pairs.Where(p => p.Turn is not null).SelectMany(p =>
        {
            var (tyre, wheel) = (Problem.Tyres[p.Tyre], Problem.Wheels[p.Wheel]);
            return tyre.Planes.Zip(wheel.Planes).Select((planes, i) =>
            {
                var plane = tyre.Planes.Count == 1 ? "" : i == 0 ? ", inner plane" : ", outer plane";
                return new Drawing($"{tyre.Name} on {wheel.Name}{plane}", () => MatchVectors.Draw(
                    string.Create(CultureInfo.InvariantCulture, $"match-{p.Tyre}-{p.Wheel}-{i}"), new MatchView<T>($"Tyre {tyre.Name} on wheel {wheel.Name}{plane}", planes.First, planes.Second, p.Turn!.Value, Unit.Symbol, Unit.Decimals)));
            });
        }),
    ];

    private bool? Within(MatchedPair<T> pair) => Limit is { } l ? Math.Round(In(pair.After), 9) <= l.Amount.Value : null;

    private JsonObject Json(MatchedPair<T> pair) => new()
    {
        ["tyre"] = Problem.Tyres[pair.Tyre].Name,
        ["wheel"] = Problem.Wheels[pair.Wheel].Name,
        ["turnDegrees"] = pair.Turn?.Degrees,
        ["before"] = pair.Before is { } b ? In(b) : null,
        ["after"] = In(pair.After),
        ["unit"] = Unit.Symbol,
        ["kept"] = pair.Kept,
        ["withinLimit"] = Within(pair),
        ["afterVectors"] = pair.AfterPlanes is { } planes ? AnswerJson.List(planes.Select(p => (JsonNode?)Vector(p))) : null,
        ["instruction"] = AnswerJson.List(Instruction(pair)),
    };

    private JsonObject Vector(HarmonicVector<T> vector) =>
        new() { ["amount"] = In(vector.Amount), ["unit"] = Unit.Symbol, ["highPointDegrees"] = vector.HighPoint.Degrees };

    private IReadOnlyList<string> Instruction(MatchedPair<T> pair)
    {
        var (tyre, wheel) = (Given.Tyres[pair.Tyre], Given.Wheels[pair.Wheel]);
        if (Given.Studs is { } studs)
        {
            return MatchWords.OnHub(tyre.Name, wheel.Name, pair.Turn!.Value, studs);
        }

        if (pair.Kept)
        {
            return [Problem.KeepUnlessGain is null ? "Leave the tyre as it stands: no turn leaves less." : "Leave the tyre as it stands: a turn or a change would not gain enough."];
        }

        return Problem.Tyres[pair.Tyre].SitsOn == pair.Wheel && pair.Turn is { } turn
            ? MatchWords.Turn(turn, tyre.Tyre, wheel.Wheel)
            : MatchWords.Change(tyre.Name, tyre.SitsOn, wheel.Name, pair.Turn, tyre.Tyre, wheel.Wheel);
    }

    private List<string> Cautions()
    {
        var cautions = new List<string>();
        if (Limit is null)
        {
            cautions.Add("No maker's limit for what may be left was given, and none is published that would hold for every vehicle: nothing is judged.");
        }

        if (Given.On != MatchQuantity.Unbalance)
        {
            cautions.Add($"Amplitudes are taken as {(Given.PeakToPeak ? "peak-to-peak" : "zero to peak")} throughout; a figure of the other kind is wrong by two.");
        }

        if (Given.Stiffness is { } k && Given.On == MatchQuantity.ForceVariation)
        {
            cautions.Add($"Runout was made force with {k.Stiffness.Text("N/mm", 1)} [{k.Source.ForPeople}]: an upper bound at walking pace; a tyre's own stiffness variation adds to it, and at speed another rate holds.");
        }

        if (Matched.Pairs.Any(p => p.Turn is null))
        {
            cautions.Add("Places were not measured for all: what is left holds for the best turn, which has to be found with high points marked.");
        }

        if (Given.Studs is null)
        {
            cautions.AddRange(Matched.Pairs.Where(p => !p.Kept).SelectMany(p => MatchWords.Cautions(Given.Tyres[p.Tyre].Tyre, Given.Wheels[p.Wheel].Wheel)).Distinct(StringComparer.Ordinal));
        }

        return cautions;
    }

    private IEnumerable<string> Lines(IReadOnlyList<string> cautions)
    {
        if (Parts is { } parts)
        {
            yield return $"Parted: tyre {Text(parts.Tyre.Amount)} at {parts.Tyre.HighPoint} as first mounted, wheel {Text(parts.Wheel.Amount)} at {parts.Wheel.HighPoint}{(parts.StandardError is { } e ? $", each ± {e.Text(Unit.Symbol, Unit.Decimals + 1)}" : "")}.";
        }

        foreach (var pair in Matched.Pairs)
        {
            var turn = pair.Turn is { } t ? $"turned {Quantity.Number(t.Degrees, 0)}° clockwise" : "at its best turn";
            yield return $"Tyre {Problem.Tyres[pair.Tyre].Name} on wheel {Problem.Wheels[pair.Wheel].Name}, {(pair.Kept ? "kept as it stands" : turn)}: {(pair.Before is { } b ? $"{Text(b)} before, " : "")}{Text(pair.After)} after{(Within(pair) == false ? $", NOT within {Limit!.Amount.Text}" : "")}.";
            foreach (var step in Instruction(pair))
            {
                yield return $"    {step}";
            }
        }

        foreach (var left in Matched.TyresLeftOut)
        {
            yield return $"Tyre {Problem.Tyres[left].Name} is left out: there are more tyres than wheels.";
        }

        foreach (var left in Matched.WheelsLeftOut)
        {
            yield return $"Wheel {Problem.Wheels[left].Name} is left out: there are more wheels than tyres.";
        }

        yield return $"Worst {Text(Matched.Worst)}, sum {Text(Matched.Sum)}: {(Problem.Aim == MatchAim.Sum ? "the least sum" : "the least worst, then the least sum")}{(Problem.KeepUnlessGain is { } k ? $", each change charged {Text(k)}" : "")}{(Matched.ProvenOptimal ? ", proven" : ", not proven")}.";
        foreach (var tyre in Given.Tyres.Where(t => t.Lateral is not null))
        {
            yield return $"Tyre {tyre.Name}: conicity {tyre.Lateral!.Conicity.Text("N", 1)}, ply steer {tyre.Lateral.PlySteer.Text("N", 1)}.";
        }

        foreach (var caution in cautions)
        {
            yield return $"Caution: {caution}";
        }
    }
}
