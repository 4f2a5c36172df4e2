using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>
/// A torque wrench lengthened off its drive axis. The wrench clicks at its own drive; the adapter adds its length along the wrench:
/// setting S = T·L/(L + A·cos α).
/// </summary>
/// <param name="WrenchLength">L: from the middle of the hand grip to the square drive.</param>
/// <param name="AdapterLength">A: from the square drive to the middle of the fixing.</param>
/// <param name="Turn">α: 0 straight on, 90° no correction, 180° folded back.</param>
public sealed record WrenchAdapter(Length WrenchLength, Length AdapterLength, Angle Turn)
{
    /// <summary>True where nobody gave the turn, and straight on was taken.</summary>
    public bool TurnAssumed { get; init; }

    /// <summary>(L + A·cos α)/L: how much more the fixing gets than the wrench shows.</summary>
    public double Gain => 1 + (AdapterLength / WrenchLength * Math.Cos(Turn.Radians));

    /// <summary>True where an arm is left: an adapter folded back as long as the wrench leaves none, and no setting reaches the fixing.</summary>
    public bool LeavesAnArm => Gain > 1e-6;

    /// <summary>What to set on the wrench for a torque at the fixing.</summary>
    /// <source>TM 9-254 figs 45 and 46; NAVEDTRA 14315 figs 3-44 and 3-45</source>
    public Torque Setting(Torque wanted) => wanted / Gain;

    /// <summary>What reaches the fixing when the wrench clicks at a setting.</summary>
    /// <source>TM 9-254 figs 45 and 46</source>
    public Torque Delivered(Torque setting) => setting * Gain;
}
