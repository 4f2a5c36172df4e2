using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>How large a trial mass may be to begin with.</summary>
public static class TrialMassSize
{
    // Standard gravity, m/s².
    private const double Gravity = 9.80665;

    /// <summary>The unbalance whose turning force is a tenth of the weight that the bearing carries: share · m·g/ω².</summary>
    /// <param name="carried">The mass that the bearing beside the plane carries, above nothing.</param>
    /// <param name="speed">The speed of the runs, above nothing.</param>
    /// <source>balance.trialForcePercent; docs/theory/balance.md, trial masses</source>
    public static Unbalance Suggested(Mass carried, RotationalSpeed speed) =>
        Unbalance.FromKilogramMetres(Figures.Of("balance.trialForcePercent").Value / 100 * carried.Kilograms * Gravity / (speed.RadiansPerSecond * speed.RadiansPerSecond));
}
