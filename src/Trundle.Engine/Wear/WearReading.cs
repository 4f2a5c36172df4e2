using System.Globalization;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Wear;

/// <summary>Tells from the depths themselves how each tyre is worn, and of what.</summary>
public static class WearReading
{
    /// <summary>
    /// Weighs every pattern against the depths of each tyre that has any, its size integrated, and with it the causes, by what else is known of the
    /// axle, the pressure and the tyre at the other side. The model, and how well it does, stand in docs/theory/wear.md.
    /// </summary>
    /// <param name="subject">The vehicle with what is fitted.</param>
    /// <returns>One reading a tyre with depths, in the order of the positions; probabilities add up to one.</returns>
    /// <source>Bayes' theorem over shapes with normal scatter; pairings of pattern and cause of <c>wear_shares.csv</c>, each with its own source; priors and sizes our own choice, in <c>wear_patterns.csv</c> and <c>wear_sizes.csv</c></source>
    public static IReadOnlyList<TyreWear> Of(FittedVehicle subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var measured = FitmentCheck.InOrder(subject).Where(a => a.Tread is { } t && (t.All.Any() || t.Ribs.Count + t.Blocks.Count > 0)).Select(a => new Measured(a)).ToList();
        return [.. measured.Select(m => Weigh(m, new WearContext(subject, m.Assembly, Partner(m, measured))))];
    }

    private sealed class Measured
    {
        public Measured(Assembly assembly)
        {
            Assembly = assembly;
            Readings = TreadReadings.Of(assembly.Tread!);
            var shapes = new WearShapes(Readings);
            LogEvidence = WearTables.Forms.ToDictionary(f => f, shapes.LogEvidence);
        }

        public Assembly Assembly { get; }

        public TreadReadings Readings { get; }

        public IReadOnlyDictionary<WearForm, double> LogEvidence { get; }

        /// <summary>By the depths alone.</summary>
        public IReadOnlyDictionary<WearForm, double> Alone()
        {
            var whole = GaussianEvidence.LogSum([.. LogEvidence.Select(e => Math.Log(e.Key.Prior) + e.Value)]);
            return LogEvidence.ToDictionary(e => e.Key, e => Math.Exp(Math.Log(e.Key.Prior) + e.Value - whole));
        }
    }

    /// <summary>The tyre at the same place of the other side of the axle.</summary>
    private static IReadOnlyDictionary<WearForm, double>? Partner(Measured here, List<Measured> all)
    {
        var at = here.Assembly.Position;
        return at.IsSpare ? null : all.FirstOrDefault(m => !m.Assembly.Position.IsSpare && m.Assembly.Position.Axle == at.Axle && m.Assembly.Position.Side != at.Side && m.Assembly.Position.Dual == at.Dual)?.Alone();
    }

    private static TyreWear Weigh(Measured measured, WearContext context)
    {
        var joint = WearTables.Forms
            .SelectMany(form => WearTables.SharesOf(form).Select(share => (Form: form, share.Cause, share.Source, Before: form.Prior * share.Share * context.Likelihood(form, share.Cause))))
            .Select(j => (j.Form, j.Cause, j.Source, j.Before, Log: measured.LogEvidence[j.Form] + Math.Log(j.Before)))
            .ToList();
        var whole = GaussianEvidence.LogSum([.. joint.Select(j => j.Log)]);
        var before = joint.Sum(j => j.Before);
        var doubt = Reference.Figures.Of("wear.doubt").Value / 100;
        var weighed = joint.Select(j => (j.Form, j.Cause, j.Source, Probability: ((1 - doubt) * Math.Exp(j.Log - whole)) + (doubt * j.Before / before))).ToList();
        var ranked = weighed.GroupBy(w => w.Form.Pattern).Select(g => (Pattern: g.Key, Probability: g.Sum(w => w.Probability), Parts: g.ToList())).OrderByDescending(p => p.Probability).ToList();
        var even = measured.LogEvidence[WearTables.Forms.First(f => f.Pattern == WearPattern.Even)];
        var patterns = ranked.Select((r, i) =>
        {
            var forms = r.Parts.GroupBy(p => p.Form).Select(g => new WearFormReading(g.Key.Form, g.Key.Text, Part(g.Sum(p => p.Probability), r.Probability))).OrderByDescending(f => f.Probability).ToList();
            var prior = WearTables.Forms.Where(f => f.Pattern == r.Pattern).ToList();
            var ratio = (GaussianEvidence.LogSum([.. prior.Select(f => Math.Log(f.Prior) + measured.LogEvidence[f])]) - Math.Log(prior.Sum(f => f.Prior)) - even) / Math.Log(10);
            var other = ranked[i == 0 ? 1 : 0];
            return new PatternReading(
                r.Pattern,
                r.Probability,
                prior.Sum(f => f.Prior),
                forms.Count > 1 ? forms : [],
                ratio,
                WearEvidence.Of(r.Pattern, measured.Readings, ratio),
                [
                    .. r.Parts.GroupBy(p => p.Cause.Cause).Select(g => new WearCause(g.Key, g.First().Cause.Text, Part(g.Sum(p => p.Probability), r.Probability), g.First().Cause.Check, g.First().Cause.Hold, g.First().Source))
                        .OrderByDescending(c => c.Probability),
                ],
                WearSteps.Between(r.Pattern, r.Probability, other.Pattern, other.Probability, measured.Readings));
        }).ToList();
        return new TyreWear(measured.Assembly.Position, patterns, context.Words, [.. Cautions(measured, patterns)]);
    }

    private static double Part(double part, double whole) => whole > 0 ? part / whole : 0;

    /// <summary>What can cost a wheel or a tyre is said as long as it is not excluded.</summary>
    private static IEnumerable<string> Cautions(Measured measured, List<PatternReading> patterns)
    {
        var least = Reference.Figures.Of("wear.not-excluded").Value / 100;
        foreach (var cause in patterns.SelectMany(p => p.Causes.Select(c => (Cause: c, Whole: p.Probability * c.Probability))).Where(c => c.Cause.BeforeDriving).GroupBy(c => c.Cause.Cause)
            .Select(g => (g.First().Cause, Whole: g.Sum(c => c.Whole))).Where(c => c.Whole >= least).OrderByDescending(c => c.Whole))
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"Not excluded ({100 * cause.Whole:0} %): {cause.Cause.Text}. Before it is driven again: {Lower(cause.Cause.Check)}.");
        }

        if (measured.Readings.Grooves.Count < 3)
        {
            yield return "Few depths were read: the probabilities are hardly more than what is held likely of any tyre.";
        }
    }

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
