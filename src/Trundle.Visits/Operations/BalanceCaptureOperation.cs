using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Files.Spin;

namespace Trundle.Visits.Operations;

/// <summary><c>balance capture</c>: from the samples of a spin to what it says once a turn, and with a calibrated machine to both planes.</summary>
public static class BalanceCaptureOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("balance capture", "From the samples of one spin to amplitude and phase, and with a calibrated machine to both planes.", Run)
    {
        TakesFile = true,
        TakesRecordings = true,
        Options =
        [
            new("--rotation", "rotation", "Which way the wheel turns as seen from its outer face: clockwise or anticlockwise."),
            new("--phases", "phases", "Whether phases lag or lead the index mark: lag or lead."),
            new("--sample-rate", "sampleRate", "Samples in a second, for example \"2 kHz\"; a WAV and a CSV with a column time_s tell it themselves."),
            new("--full-scale", "fullScale", "The reading at the end of the scale: what whole-number WAV samples count to, and where a signal is clipped."),
            new("--harmonics", "harmonics", "How many harmonics are fitted, 1 to 10; 5 by default."),
            new("--calibration", "calibration", "A JSON file with the machine's calibration, as 'balance calibrate' writes it.") { IsFile = true },
        ],
    };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var file = SpinFileReader.Read(body, problems);
        if (file is null || problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        if (SpinAnalysis.Of(file.Recording, file.Harmonics) is not { } result)
        {
            return Reading<Answer>.Failed(NoSpeed("recording.index"));
        }

        List<SpinWarning> warnings = [.. result.Warnings];
        var found = Find(file, result, warnings);
        return Reading<Answer>.Of(new Answer(warnings.Count > 0, Json(file, result, found, warnings), [.. Lines(file, result, found, warnings)]));
    }

    /// <summary>The problem of a recording whose index tells no speed.</summary>
    internal static Problem NoSpeed(string where) => new(where, "no-speed",
        "The index signal shows fewer than two marks, or fewer than eight samples between them: no speed can be told. Look at the mark and its sensor, name the right column or channel, and record several turns.");

    private static FoundUnbalance? Find(SpinFile file, SpinResult result, List<SpinWarning> warnings)
    {
        if (file.Calibration is not { } calibration)
        {
            return null;
        }

        if (!calibration.Serves(result.Speed))
        {
            warnings.Add(new SpinWarning("speed-outside-calibration", null, Amount.Of(result.Speed, "r/min", 1),
                new Limit(new Amount(null, "r/min", $"{calibration.Speeds[0].Text("r/min", 1)} to {calibration.Speeds[^1].Text("r/min", 1)}"), Figures.Of("spin.beyondCalibrationPercent").Source),
                "The machine is not calibrated for this speed: spin at a calibrated one, or calibrate at this one. No planes are told."));
            return null;
        }

        var found = calibration.Find(result, file.Recording.Sense, file.Planes);
        var limit = Figures.Of("spin.mostConditionNumber");
        if (found is null)
        {
            warnings.Add(new SpinWarning("planes-not-independent", null, Amount.Word("condition number without bound"), limit.Limit(0), "The transducers cannot tell the two planes apart: calibrate anew. No planes are told."));
        }
        else if (found.ConditionNumber > limit.Value)
        {
            warnings.Add(new SpinWarning("planes-nearly-dependent", null, Amount.Number(found.ConditionNumber, "", 1), limit.Limit(0), "The transducers hardly tell the two planes apart: large masses may fight each other. Calibrate anew, with transducers or planes further apart."));
        }

        if (found is not null)
        {
            warnings.AddRange(NotSmall(found, file.PerPlane));
        }

        return found;
    }

    /// <summary>What may be left in each plane where nobody says it.</summary>
    private static Figure Customary => Figures.Of("balance.perPlane");

    /// <summary>A reading says whether a plane is within its tolerance only where its error is small beside that, or beside the customary one where none is given.</summary>
    private static IEnumerable<SpinWarning> NotSmall(FoundUnbalance found, Mass? given)
    {
        var tolerance = given ?? Customary.As<Mass>();
        var whose = given is null ? $"the customary {Quantity.Number(tolerance.Grams, 0)} g a plane ({Customary.Source.Text})" : "the tolerance";
        var share = Figures.Of("spin.mostErrorOfTolerancePercent");
        foreach (var (name, place, error) in new[]
        {
            ("inner", found.Planes.Inner, found.Across(found.Unbalance.Inner, found.InnerStandardError)), ("outer", found.Planes.Outer, found.Across(found.Unbalance.Outer, found.OuterStandardError)),
        })
        {
            var grams = error.GramMillimetres / place.Radius.Millimetres;
            var most = share.Value / 100 * tolerance.Grams;
            if (grams > most)
            {
                yield return new SpinWarning("errors-not-small", null,
                    new Amount(grams, "g", $"{name} plane ± {Quantity.Number(grams, 2)} g"),
                    new Limit(new Amount(most, "g", $"{Quantity.Number(most, 2)} g, {Quantity.Number(share.Value, 0)} % of {whose}"), share.Source),
                    $"The standard error is not small beside {whose}, so this spin does not show whether the plane is within it: record for longer or at a higher calibrated speed, and calibrate anew with greater masses and more spins.");
            }
        }
    }

    private static JsonObject Json(SpinFile file, SpinResult result, FoundUnbalance? found, List<SpinWarning> warnings) => new()
    {
        ["speedRevolutionsPerMinute"] = result.Speed.RevolutionsPerMinute,
        ["speedStandardErrorRevolutionsPerMinute"] = result.SpeedStandardError.RevolutionsPerMinute,
        ["speedBySignalRevolutionsPerMinute"] = result.SpeedBySignal?.RevolutionsPerMinute,
        ["driftPercent"] = result.DriftPercent,
        ["turns"] = result.Turns,
        ["marks"] = result.Marks,
        ["samples"] = result.Samples,
        ["sampleRateHertz"] = file.Recording.SampleRate.Hertz,
        ["harmonics"] = result.Harmonics,
        ["rotation"] = SpinJson.Word(file.Recording.Sense.Rotation),
        ["phases"] = SpinJson.Word(file.Recording.Sense.Phases),
        ["points"] = AnswerJson.List(result.Points.Select(p => (JsonNode?)new JsonObject
        {
            ["amplitude"] = p.Amplitude,
            ["phaseDegrees"] = p.Phase.Degrees,
            ["amplitudeStandardError"] = p.AmplitudeStandardError,
            ["phaseStandardErrorDegrees"] = p.PhaseStandardError.Degrees,
            ["offset"] = p.Offset,
            ["noise"] = p.Noise,
            ["higherHarmonics"] = AnswerJson.List(p.HigherHarmonics.Select(h => (JsonNode?)JsonValue.Create(h))),
            ["wander"] = p.Wander,
            ["wanderRatio"] = p.WanderRatio is { } ratio && double.IsFinite(ratio) ? ratio : null,
        })),
        ["planes"] = found is null ? null : PlanesJson(file, found),
        ["tolerance"] = new JsonObject
        {
            ["perPlaneGrams"] = (file.PerPlane ?? Customary.As<Mass>()).Grams,
            ["source"] = file.PerPlane is null ? Customary.Source.Text : "as given",
        },
        ["warnings"] = AnswerJson.List(warnings.Select(w => (JsonNode?)SpinJson.Warning(w))),
        ["cautions"] = AnswerJson.List(SpinJson.Cautions),
    };

    /// <summary>As the readings of <c>balance solve</c>: the mass to add and its place from the valve.</summary>
    private static JsonObject PlanesJson(SpinFile file, FoundUnbalance found)
    {
        var couple = found.Unbalance.Couple(found.Planes);
        return new JsonObject
        {
            ["inner"] = Plane(found.Unbalance.Inner, found.Planes.Inner, found.InnerStandardError),
            ["outer"] = Plane(found.Unbalance.Outer, found.Planes.Outer, found.OuterStandardError),
            ["staticGramMillimetres"] = found.Unbalance.Static.Amount.GramMillimetres,
            ["coupleGramSquareMillimetres"] = couple.Amount.GramSquareMillimetres,
            ["conditionNumber"] = found.ConditionNumber,
            ["errorsHoldCalibration"] = found.HoldsCalibrationError,
        };

        JsonObject Plane(UnbalanceVector heavy, PlanePlace place, Unbalance error)
        {
            var json = BalanceJson.Place(place);
            json["massGrams"] = heavy.MassAt(place.Radius).Grams;
            json["angleDegrees"] = ToAdd(file, heavy).Degrees;
            json["massStandardErrorGrams"] = error.GramMillimetres / place.Radius.Millimetres;
            json["angleStandardErrorDegrees"] = AngleError(found, heavy, error).Degrees;
            json["gramMillimetres"] = heavy.Amount.GramMillimetres;
            return json;
        }
    }

    private static WheelAngle ToAdd(SpinFile file, UnbalanceVector heavy) => WheelAngle.FromDegrees(heavy.Opposite.Place.Degrees - file.Valve.Degrees);

    private static Angle AngleError(FoundUnbalance found, UnbalanceVector heavy, Unbalance error) =>
        Angle.FromRadians(heavy.Amount.Si > 0 ? Math.Min(Math.PI, found.Across(heavy, error) / heavy.Amount) : Math.PI);

    private static IEnumerable<string> Lines(SpinFile file, SpinResult result, FoundUnbalance? found, List<SpinWarning> warnings)
    {
        yield return string.Create(CultureInfo.InvariantCulture,
            $"{result.Speed.Text("r/min", 2)} ± {result.SpeedStandardError.RevolutionsPerMinute:0.000}, {result.Turns:0.0} turns, {SpinJson.Word(file.Recording.Sense.Rotation)} as seen from the outer face; phases {SpinJson.Word(file.Recording.Sense.Phases)}.");
        for (var p = 0; p < result.Points.Count; p++)
        {
            var point = result.Points[p];
            yield return string.Create(CultureInfo.InvariantCulture,
                $"Transducer {p + 1}: {point.Amplitude:G5} ± {point.AmplitudeStandardError:G2} at {point.Phase.Degrees:0.00}° ± {point.PhaseStandardError.Degrees:G2}° (one standard error)");
        }

        foreach (var (name, heavy, place, error) in found is null ? [] : new[]
        {
            ("Inner", found.Unbalance.Inner, found.Planes.Inner, found.InnerStandardError), ("Outer", found.Unbalance.Outer, found.Planes.Outer, found.OuterStandardError),
        })
        {
            yield return string.Create(CultureInfo.InvariantCulture,
                $"{name} plane: add {heavy.MassAt(place.Radius).Text("g", 2)} ± {error.GramMillimetres / place.Radius.Millimetres:0.00} g at {ToAdd(file, heavy)} ± {AngleError(found!, heavy, error).Degrees:0.0}°, at {place.Radius.Text("mm", 1)} from the axis");
        }

        if (found is { HoldsCalibrationError: false })
        {
            yield return "The errors of the planes leave out the calibration's own, which it does not tell.";
        }

        if (found is null && file.Calibration is null)
        {
            yield return "The machine is not calibrated: 'trundle balance calibrate' makes a calibration from spins with known masses.";
        }

        foreach (var warning in warnings)
        {
            yield return SpinJson.Line(warning);
        }

        foreach (var caution in SpinJson.Cautions)
        {
            yield return $"Caution: {caution}";
        }
    }
}
