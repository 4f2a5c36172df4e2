using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Wear;

/// <summary>The readings of the wear as findings: the likeliest pattern with its probability where even wear is not the likelier thing, never worse than minor.</summary>
internal static class WearFindings
{
    public static void Add(CheckBook book)
    {
        foreach (var wear in WearReading.Of(book.Subject))
        {
            var at = wear.Position.ToString();
            var tread = book.Subject.At(wear.Position)!.Tread!;
            var even = wear.Of(WearPattern.Even).Probability;
            var worn = wear.Patterns.First(p => p.Pattern != WearPattern.Even);
            if (even < Figures.Of("wear.say-from").Value / 100)
            {
                // What only the axle or the other tyre makes likely is in the answer; a finding is of these depths.
                if (worn.EvidenceLogRatio <= 0)
                {
                    continue;
                }

                var rule = book.Rule($"wear.{worn.Pattern.Word()}{(book.Vehicle.SingleTrack && AnotherThing(worn.Pattern) ? ".motorcycle" : "")}");
                book.Judge(rule, at, true, Measured(worn, tread), null, Action(worn, rule), [.. wear.Cautions]);
            }
            else if (tread.Inner.Count > 0 && tread.Centre.Count > 0 && tread.Outer.Count > 0)
            {
                book.Judge("wear.even", at, false, Amount.Word($"even, likeliest by the program's model ({Percent(even)})"), null);
            }
        }
    }

    /// <summary>A motorcycle has no toe, no camber and no rotation: what is done about these is another thing there.</summary>
    private static bool AnotherThing(WearPattern pattern) => pattern is WearPattern.Centre or WearPattern.OneShoulder or WearPattern.Feather or WearPattern.HeelAndToe or WearPattern.Diagonal;

    private static Amount Measured(PatternReading worn, TreadDepths tread)
    {
        var readings = TreadReadings.Of(tread);
        return Amount.Word(worn.Pattern switch
        {
            WearPattern.Cups or WearPattern.Diagonal or WearPattern.FlatSpot => WearEvidence.Around(readings),
            WearPattern.Feather or WearPattern.HeelAndToe => worn.Evidence.Split(". ")[0],
            WearPattern.Even or WearPattern.Centre or WearPattern.BothShoulders or WearPattern.OneShoulder or WearPattern.Other => WearEvidence.Across(readings),
        });
    }

    /// <summary>The pattern as the model's likeliest with its figure, its likeliest causes, that somebody should look, and what the trade does about it: a model's figure is no certainty.</summary>
    private static string Action(PatternReading worn, InUseRule rule) =>
        $"Likeliest by the program's model ({Percent(worn.Probability)}), not certain: {char.ToLowerInvariant(rule.Text[0])}{rule.Text[1..].TrimEnd('.')}; it may come of {string.Join(" or ", worn.Causes.Take(2).Select(c => c.Text))}. Somebody should look at the tyre before anything is done about it. {rule.Action}";

    private static string Percent(double probability) => probability > 0.99 ? "over 99 %" : string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %");
}
