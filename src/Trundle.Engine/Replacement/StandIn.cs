using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Pressure;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Replacement;

/// <summary>Whether a tyre may stand in for the placard's.</summary>
public enum StandInCase
{
    /// <summary>It is what the placard names, or the same size with as much load and speed.</summary>
    AsPlacard,

    /// <summary>Another size with nothing against it here: the vehicle maker's list or papers must allow it.</summary>
    WithApproval,

    /// <summary>Something is missing to judge it.</summary>
    Ask,

    /// <summary>Something speaks against it.</summary>
    Refused,
}

/// <summary>A candidate on one axle.</summary>
/// <param name="Axle">The axle, from 1.</param>
/// <param name="Placard">The placard's marking.</param>
/// <param name="Circumference">Its circumference over the placard's, 1 where they are alike; null where a diameter is not known.</param>
/// <param name="Pressure">What it is set to cold on this axle, or null.</param>
/// <param name="Clearance">The room it takes beside the placard's, or null where a dimension is not known.</param>
public sealed record StandInAxle(int Axle, Marking Placard, double? Circumference, SourcedPressure? Pressure, StandInClearance? Clearance);

/// <summary>The room that a tyre takes beside the placard's, by design, and at the most by the tolerances of a new tyre.</summary>
/// <param name="Width">Section width on its rim.</param>
/// <param name="Diameter">Overall diameter.</param>
/// <param name="Wider">How much wider than the placard's on its measuring rim.</param>
/// <param name="Taller">How much larger its radius is.</param>
/// <param name="MostWidth">Width of a new tyre at the most.</param>
/// <param name="MostDiameter">Diameter of a new tyre at the most.</param>
/// <param name="Source">Where the tolerances come from.</param>
public sealed record StandInClearance(Length? Width, Length Diameter, Length? Wider, Length Taller, Length? MostWidth, Length MostDiameter, Source Source);

/// <summary>What a speedometer and an odometer do with other tyres.</summary>
/// <param name="Shown">A speed shown.</param>
/// <param name="True">The true speed then, where the speedometer was exact before.</param>
/// <param name="Ratio">True distance over the distance shown.</param>
public sealed record SpeedometerEffect(Speed Shown, Speed True, double Ratio);

/// <summary>One candidate judged.</summary>
/// <param name="Candidate">The candidate.</param>
/// <param name="Case">How it came out.</param>
/// <param name="Why">Every reason that holds, gravest first; empty where nothing speaks against it.</param>
/// <param name="Axles">On each axle that was asked for.</param>
/// <param name="Speedometer">What it does to the speedometer, or null where a diameter is not known.</param>
/// <param name="Rims">The rim widths that a table names for it, or null: then its maker is asked.</param>
/// <param name="Findings">What speaks for and against it, the passes too.</param>
/// <param name="Needs">What is missing.</param>
/// <param name="Cautions">What stands beside it.</param>
public sealed record StandIn(
    ReplacementCandidate Candidate, StandInCase Case, IReadOnlyList<string> Why, IReadOnlyList<StandInAxle> Axles, SpeedometerEffect? Speedometer, RimRange? Rims,
    IReadOnlyList<Finding> Findings, IReadOnlyList<Need> Needs, IReadOnlyList<string> Cautions)
{
    /// <summary>
    /// Judges a candidate on the axles asked for, by the very rules that judge what is fitted: the vehicle is looked at as if it were on.
    /// </summary>
    /// <param name="subject">The vehicle.</param>
    /// <param name="candidate">The candidate.</param>
    /// <param name="request">What was asked.</param>
    /// <param name="conditions">Laden or not, and whose rules, for the pressure.</param>
    /// <source>the rules of <see cref="FitmentCheck"/>, each with its own source; circumference: a tyre maker's page (read) and trade practice (second-hand); speedometer: UN R39 5.3 (second-hand)</source>
    public static StandIn Judge(FittedVehicle subject, ReplacementCandidate candidate, ReplacementRequest request, PressureConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(candidate);
        ArgumentNullException.ThrowIfNull(request);
        var places = ReplacementPlaces.On(subject, request.Axles);
        var with = ReplacementPlaces.With(subject, places, candidate, request.NewTread);
        HashSet<string> here = [.. places.Select(p => p.ToString()), .. request.Axles.Select(a => $"axle {a.ToString(CultureInfo.InvariantCulture)}")];
        var fitment = FitmentCheck.Run(with);
        var plan = PressurePlan.For(with, conditions);
        var axles = request.Axles.Where(a => subject.Vehicle.Axles[a - 1].Placard?.Size is not null).Select(a => OnAxle(a, with, candidate, plan)).ToList();
        var otherWheels = places.Any(p => subject.At(p)?.Wheel is { } now && with.At(p)!.Wheel != now);
        var sensors = SensorDuty.OnChange(subject, places, otherWheels);
        var effect = Effect(subject, request.Axles, axles);

        var findings = fitment.Findings.Where(f => f.Position is null || here.Contains(f.Position))
            .Concat(axles.Select(a => Use(a, candidate)).OfType<Finding>())
            .Concat(axles.Select(a => Built(a, candidate)).OfType<Finding>())
            .Concat(axles.Select(a => Circumference(a, candidate)).OfType<Finding>())
            .Concat(plan.Findings.Where(f => here.Contains(f.Position!) && f.Rule is "pressure.overloaded" or "pressure.limits-conflict"))
            .Concat(sensors.Findings);
        if (effect is not null && request.Speedometer is { } reading && Shows(subject, candidate, axles, reading) is { } shows)
        {
            findings = findings.Append(shows);
        }

        var judged = Joined(findings);
        var needs = fitment.Needs.Where(n => n.Position is null || here.Contains(n.Position)).Concat(sensors.Needs).ToList();
        var rims = RimRanges.For(candidate.Marking.Size);
        var against = judged.Where(f => f.Rule != SizeRule && f.Category >= Category.Major).OrderByDescending(f => f.Category).ToList();
        var same = axles.TrueForAll(a => Fitment.SizeMatch.Relation(candidate.Marking.Size, a.Placard.Size) is SizeRelation.Same or SizeRelation.SameButEightyAndEightyTwo);
        var asked = needs.Where(n => IsOfTheTyre(n, fitment)).ToList();
        var referred = judged.Where(f => f.Rule != SizeRule && f.Category == Category.Refer).ToList();
        var found = against.Count > 0 ? StandInCase.Refused
            : asked.Count > 0 || referred.Exists(IsOfTheTyre) ? StandInCase.Ask
            : same ? StandInCase.AsPlacard : StandInCase.WithApproval;

        // Every reason that holds is told, not only those that decide the case.
        List<string> why =
        [
            .. against.Concat(referred).Select(f => Told(f, candidate)),
            .. asked.Select(n => $"{n.What}: {n.Why}.").Distinct(StringComparer.Ordinal),
            .. same ? [] : new[] { "Another size than the placard's: only with the vehicle maker's list of sizes or papers that approve it for this vehicle." },
        ];
        return new StandIn(candidate, found, why, axles, effect, rims, judged, needs, [.. Beside(candidate, same, axles, otherWheels, rims)]);
    }

    private const string SizeRule = "size.placard";

    private const string RunFlatRule = "run-flat";

    private const string CircumferenceRule = "replacement.circumference";

    /// <summary>What a candidate's own data leaves open; what is asked of hub and vehicle is asked, but does not hold the candidate up.</summary>
    private static bool IsOfTheTyre(Need need, CheckResult fitment) => fitment.Needs.Contains(need)
        && (need.What.StartsWith("the tyre's", StringComparison.Ordinal) || need.What.StartsWith("the rim stamp", StringComparison.Ordinal)
            || need.What.StartsWith("the approved rim widths", StringComparison.Ordinal) || need.What.StartsWith("the wheel: ", StringComparison.Ordinal));

    /// <summary>What is found of the tyre itself on its rim and axle; a hub or a sensor is the vehicle's, and how far the circumference may go its papers say.</summary>
    private static bool IsOfTheTyre(Finding finding) =>
        finding.Rule != CircumferenceRule && finding.Rule.Split('.')[0] is "rim" or "run-flat" or "replacement" or "mix" or "load" or "speed" or "use" or "size" or "pressure";

    private static string Told(Finding f, ReplacementCandidate candidate)
    {
        var what = f.Rule != RunFlatRule ? $"{f.Measured.Text}{(f.Limit is { } limit ? $", limit {limit.Amount.Text}" : "")}"
            : SidewallMarks.IsRunFlat(new FittedTyre { Marking = candidate.Marking, Marks = candidate.Marks }) ? "a run-flat tyre for an ordinary one" : "an ordinary tyre for a run-flat one";
        return $"{f.Position ?? "vehicle"}: {what}. {f.Action}";
    }

    /// <summary>Another construction than the placard's: it handles otherwise, and it never stands beside the other one.</summary>
    private static Finding? Built(StandInAxle axle, ReplacementCandidate candidate)
    {
        var own = SidewallMarks.Constructions(new FittedTyre { Marking = candidate.Marking, Marks = candidate.Marks });
        var asked = SidewallMarks.Constructions(new FittedTyre { Marking = axle.Placard });
        return own.Intersect(asked).Any()
            ? null
            : new Finding("replacement.construction", Category.Refer, CheckBook.AxleName(axle.Axle), Amount.Word(Words(own)), new Limit(Amount.Word(Words(asked)), Source.Entered("the vehicle's placard, as entered")), Source.CommonPractice,
                "Another construction than the placard's: ask the vehicle's maker. Constructions are never mixed on an axle, and radial tyres never stand in front of others.");
    }

    private static string Words(IReadOnlyList<Construction> constructions) => string.Join(" or ", constructions.Select(MixingRules.Word));

    private static StandInAxle OnAxle(int axle, FittedVehicle with, ReplacementCandidate candidate, PressurePlan plan)
    {
        var placard = with.Vehicle.Axles[axle - 1].Placard!.Size!;
        var place = with.OnAxle(axle)[0];
        var ratio = candidate.Marking.Size.OverallDiameter is { } own && placard.Size.OverallDiameter is { } asked ? own / asked : (double?)null;

        // The placard's pressure is for the placard's tyre: of another size whose load is not known, no pressure can be told.
        var service = candidate.Marking.Service;
        var told = service.LoadIndexSingle is not null || service.LoadRange is not null || Fitment.SizeMatch.Relation(candidate.Marking.Size, placard.Size) == SizeRelation.Same;
        return new StandInAxle(axle, placard, ratio, told ? plan.Positions.First(p => p.Position == place.Position).Cold.Pressure : null, Clearance(candidate.Marking.Size, placard.Size, place.Wheel?.Rim));
    }

    private static StandInClearance? Clearance(SizeDesignation size, SizeDesignation placard, RimStamp? rim)
    {
        if (size.OverallDiameter is not { } diameter || placard.OverallDiameter is not { } asked)
        {
            return null;
        }

        var width = rim is not null && Dimensions.SectionWidthOn(size, rim.Width) is { } onRim ? onRim : size.DesignSectionWidth;
        var nominal = Length.FromMillimetres(size.RimDiameterMillimetres ?? Dimensions.NominalRimDiameter(size.RimDiameterInches!.Value).Millimetres);
        var (byWidth, byHeight) = (Figures.Of("replacement.growth-width"), Figures.Of("replacement.growth-height"));
        return new StandInClearance(
            width,
            diameter,
            width is { } w && placard.DesignSectionWidth is { } p ? w - p : null,
            (diameter - asked) / 2,
            width * (1 + (byWidth.Value / 100)),
            diameter + ((diameter - nominal) * (byHeight.Value / 100)),
            byWidth.Source);
    }

    /// <summary>The speedometer goes by the wheels of the first driven axle, or of the first one asked for.</summary>
    private static SpeedometerEffect? Effect(FittedVehicle subject, IReadOnlyList<int> asked, List<StandInAxle> axles)
    {
        var driven = Drivetrain.DrivenAxles(subject.Vehicle).Where(asked.Contains).ToList();
        var axle = axles.Find(a => a.Axle == driven.FirstOrDefault()) ?? axles.FirstOrDefault();
        if (axle?.Circumference is not { } ratio)
        {
            return null;
        }

        var shown = Figures.Of("replacement.speedometer-shown").As<Speed>();
        return new SpeedometerEffect(shown, shown * ratio, ratio);
    }

    /// <summary>What was shown with the tyres that are on, counted over to the candidate.</summary>
    private static Finding? Shows(FittedVehicle subject, ReplacementCandidate candidate, List<StandInAxle> axles, SpeedometerReading reading)
    {
        var axle = axles.Find(a => Drivetrain.DrivenAxles(subject.Vehicle).Contains(a.Axle)) ?? axles[0];
        var now = subject.OnAxle(axle.Axle).Select(a => a.Tyre?.Marking?.Size.OverallDiameter).FirstOrDefault(d => d is not null) ?? axle.Placard.Size.OverallDiameter;
        if (now is not { } fitted || candidate.Marking.Size.OverallDiameter is not { } own)
        {
            return null;
        }

        var shows = reading.Shown * (fitted / own);
        var part = Figures.Of("replacement.speedometer-part");
        var most = (reading.True * (1 + (part.Value / 100))) + Figures.Of("replacement.speedometer-fixed").As<Speed>();
        var (breached, action) = shows < reading.True ? (true, "The speedometer would show less than the true speed: it must be set to this circumference, or the size is not fitted.")
            : shows > most ? (true, "The speedometer would show more than it may: it must be set to this circumference, or the size is not fitted.")
            : (false, "Within what a speedometer may show.");
        return new Finding("replacement.speedometer", breached ? Category.Major : Category.None, null, new Amount(shows.KilometresPerHour, "km/h", $"shows {shows.Text("km/h", 1)} at a true {reading.True.Text("km/h", 1)}"),
            new Limit(new Amount(most.KilometresPerHour, "km/h", $"{reading.True.Text("km/h", 1)} to {most.Text("km/h", 1)}"), part.Source), part.Source, action);
    }

    /// <summary>A tyre made for one use alone stands in for no other: a temporary spare, a trailer's, a motorcycle's.</summary>
    private static Finding? Use(StandInAxle axle, ReplacementCandidate candidate)
    {
        TyreClass[] alone = [TyreClass.TemporarySpare, TyreClass.SpecialTrailer, TyreClass.Motorcycle];
        var (own, asked) = (candidate.Marking.Size.TyreClass, axle.Placard.Size.TyreClass);
        return own != asked && (alone.Contains(own) || alone.Contains(asked))
            ? new Finding("replacement.use", Category.Major, $"axle {axle.Axle.ToString(CultureInfo.InvariantCulture)}", Amount.Word(candidate.Marking.Size.Text), new Limit(Amount.Word(axle.Placard.Size.Text), Source.Entered("the vehicle's placard, as entered")), Source.CommonPractice,
                "A temporary spare, a trailer tyre and a motorcycle tyre are each made for that use alone. Fit a tyre of the placard's kind.")
            : null;
    }

    private static Finding? Circumference(StandInAxle axle, ReplacementCandidate candidate)
    {
        if (axle.Circumference is not { } ratio)
        {
            return null;
        }

        var percent = (ratio - 1) * 100;
        var trade = Figures.Of("replacement.diameter-trade");
        var (low, high) = (Figures.Of("replacement.diameter-maker-low"), Figures.Of("replacement.diameter-maker-high"));
        var beyond = Math.Abs(percent) > trade.Value;
        var near = percent > high.Value || percent < -low.Value;
        var text = $"{(percent > 0 ? "+" : "")}{Quantity.Number(percent, 2)} % ({candidate.Marking.Size.OverallDiameter!.Value.Text("mm", 0)} for {axle.Placard.Size.OverallDiameter!.Value.Text("mm", 0)})";
        var limit = beyond
            ? new Limit(new Amount(trade.Value, "%", $"{Quantity.Number(trade.Value, 0)} % either way"), trade.Source)
            : new Limit(new Amount(percent > 0 ? high.Value : -low.Value, "%", $"-{Quantity.Number(low.Value, 1)} % to +{Quantity.Number(high.Value, 1)} %"), high.Source);
        return new Finding(CircumferenceRule, beyond ? Category.Major : near ? Category.Refer : Category.None, $"axle {axle.Axle.ToString(CultureInfo.InvariantCulture)}",
            new Amount(percent, "%", text), limit, limit.Source, beyond ? "Too far from the placard's circumference: speed, distance, brakes' electronics and clearance are all off. Fit another size."
            : near ? "Let the vehicle's maker or an examiner decide, with the speedometer measured." : "In order.");
    }

    /// <summary>What a rule says alike of several positions stands once, with all of them.</summary>
    private static List<Finding> Joined(IEnumerable<Finding> findings) =>
        [.. findings.GroupBy(f => (f.Rule, f.Category, f.Measured, f.Limit, f.Action, string.Join('\n', f.Cautions)))
            .Select(g => g.First() with { Position = g.First().Position is null ? null : string.Join(", ", g.Select(f => f.Position).Distinct()) })];

    private static IEnumerable<string> Beside(ReplacementCandidate candidate, bool same, List<StandInAxle> axles, bool otherWheels, RimRange? rims)
    {
        foreach (var caution in candidate.Marking.Cautions)
        {
            yield return caution;
        }

        if (candidate.FromTables)
        {
            yield return "Only the size is carried in the tables: whether such a tyre is made with the load index and speed symbol that are asked for, its makers' lists say.";
        }

        if (!same)
        {
            foreach (var a in axles.Where(a => a.Clearance is not null).GroupBy(a => a.Clearance).Select(g => g.First()))
            {
                var c = a.Clearance!;
                var wide = c.Wider is { } wider ? $", {Signed(wider)} in width (half of that on each side where the wheel's offset stays)" : "";
                yield return $"Clearance: {Signed(c.Taller)} in radius{wide}; a new tyre may grow to {c.MostDiameter.Text("mm", 0)}{(c.MostWidth is { } most ? $" by {most.Text("mm", 0)}" : "")}. Measure at full lock, fully laden and with the suspension pushed home: arch, strut, brake, hoses; and between duals.";
            }

            yield return "Pressure: the placard's is for the placard's tyre. What is told here carries the placard's load on this one; the tyre maker's table comes first.";
        }

        if (rims is null)
        {
            yield return "No table of rim widths is held for this size: ask its maker or the standard's yearbook before it goes on any rim. No estimate stands for one.";
        }
        else if (rims.Note.Length > 0)
        {
            yield return $"Rim width: {rims.Note}; ask the tyre's own maker.";
        }

        if (otherWheels)
        {
            yield return "Other wheels: bolt circle, bore, seat, offset, load rating and room for the brake are checked on the wheel itself, and fixings of the right kind and length go with it.";
        }
    }

    private static string Signed(Length length) => $"{(length.Millimetres > 0 ? "+" : "")}{length.Text("mm", 1)}";
}
