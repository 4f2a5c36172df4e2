using Trundle.Engine.Balance;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>What a balancer's display leaves open, and what was assumed of its settings, in a technician's words.</summary>
public static class BalanceDisplayWords
{
    /// <summary>The cautions of one result that come from the balancer's display and scale.</summary>
    public static IReadOnlyList<string> Cautions(BalanceFile file, BalanceOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(outcome);
        List<string> cautions = [.. Assumed(file)];
        if (DisplayReckoning.Of(outcome, file.Profile) is not { } open)
        {
            return cautions;
        }

        var profile = file.Profile;
        foreach (var (side, shown) in Sides(open))
        {
            if (shown.ShowsNothing && shown.Most.Si > 0)
            {
                cautions.Add($"The {BalanceWords.Word(side)} plane shows nothing, and this balancer shows nothing up to {shown.Most.Text("g", 1)}: that much may be there, at any angle. It is reckoned as nothing in the weights, and as up to {shown.Most.Text("g", 1)} in what may be left.");
            }
            else if (!shown.ShowsNothing && profile.DisplayHidesBelow is { } hidden && shown.Shown.Grams < hidden.Grams - 1e-9)
            {
                cautions.Add($"The {BalanceWords.Word(side)} plane shows {shown.Shown.Text("g", 1)}, but by its profile this balancer shows nothing below {hidden.Text("g", 1)}: read the display again, or put the profile right.");
            }
        }

        if (profile.DisplayStep is { Si: > 0 } step && Sides(open).Any(s => !s.Shown.ShowsNothing))
        {
            cautions.Add($"This balancer rounds to {step.Text("g", 1)}: each reading may be off by {(step / 2).Text("g", 2)}{(profile.DisplayAngleStep is { Si: > 0 } turn ? $", and each angle by {(turn / 2).Text("°", 1)}" : "")}.");
        }

        if (Finer(open) is { } finer)
        {
            cautions.Add(finer);
        }
        else if (outcome.WithinTolerance && !open.WithinToleranceAtWorst)
        {
            cautions.Add($"Within tolerance by what is shown only: with what the display rounds and hides, {BalanceWords.Part(open.WorstParts.MaxBy(p => p.Ratio)!, "may keep")}. The check spin decides.");
        }

        return cautions;
    }

    /// <summary>The caution where the tolerance is finer than the display can show, whatever it shows; or null.</summary>
    public static string? Finer(DisplayUncertainty open)
    {
        ArgumentNullException.ThrowIfNull(open);
        return open.ToleranceFinerThanDisplay
            ? $"The tolerance is finer than this display can show: with nothing shown in both planes, {BalanceWords.Part(open.HiddenParts.MaxBy(p => p.Ratio)!, "may still keep")}. Nothing shown is no proof of being within tolerance here; use the balancer's finer display if it has one, or another balancer."
            : null;
    }

    /// <summary>What was assumed where settings were turned into planes without a profile.</summary>
    public static IReadOnlyList<string> Assumed(BalanceFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return file.ProfileAssumed
            ? ["No profile of this balancer was given: the rim distance is taken in millimetres where no unit stands beside it, its zero as the zero of 'axial', the inner flange plane exactly at the rim distance and clips exactly at the flanges. Give the balancer's profile where it counts otherwise."]
            : [];
    }

    /// <summary>The line about the worst case.</summary>
    internal static string AtWorst(DisplayUncertainty open) =>
        $"At the worst that the display leaves open: {open.WorstInner.Text("g", 1)} inner and {open.WorstOuter.Text("g", 1)} outer are left; {(open.WithinToleranceAtWorst ? "still within tolerance" : "then NOT within tolerance")}, {BalanceWords.Part(open.WorstParts.MaxBy(p => p.Ratio)!, "may keep")}.";

    private static IEnumerable<(PlaneSide Side, ShownMass Shown)> Sides(DisplayUncertainty open) => [(PlaneSide.Inner, open.Inner), (PlaneSide.Outer, open.Outer)];
}
