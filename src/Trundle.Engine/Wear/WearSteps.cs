using Trundle.Engine.Reference;

namespace Trundle.Engine.Wear;

/// <summary>Which further measurement parts two patterns.</summary>
internal static class WearSteps
{
    private const int PlacesEnough = 6;

    /// <summary>The measurement, not yet made, whose outcome tells most about which of the two it is, in bits, less the price of its minutes; null where nothing is left.</summary>
    public static WearStep? Between(WearPattern one, double oneProbability, WearPattern other, double otherProbability, TreadReadings readings)
    {
        var part = oneProbability + otherProbability > 0 ? Math.Clamp(oneProbability / (oneProbability + otherProbability), 0.02, 0.98) : 0.5;
        var price = Figures.Of("wear.minute-price").Value;
        var best = WearTables.Steps.Where(s => !Made(s.Key, readings)).MaxBy(s => Bits(part, s.Shows[one], s.Shows[other]) - (price * s.Minutes));
        return best is null ? null : new WearStep(best.Key, best.Text, best.ShowsText, other, best.Shows[one] >= best.Shows[other]);
    }

    /// <summary>What an outcome tells of which of two it is, in bits.</summary>
    private static double Bits(double part, double inOne, double inOther) =>
        Entropy((part * inOne) + ((1 - part) * inOther)) - (part * Entropy(inOne)) - ((1 - part) * Entropy(inOther));

    private static double Entropy(double p) => p is <= 0 or >= 1 ? 0 : -((p * Math.Log2(p)) + ((1 - p) * Math.Log2(1 - p)));

    private static bool Made(string step, TreadReadings readings) => step switch
    {
        "across" => readings.Mean(-1) is not null && readings.Mean(0) is not null && readings.Mean(1) is not null,
        "around" => readings.Rounds.Count >= PlacesEnough,
        "rib-edges" => readings.Ribs.Count > 0,
        "block-edges" => readings.BlocksMm.Count > 0,
        _ => false,
    };
}
