using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Mounting;

/// <summary>The stop before a rim of several pieces, or one that may be: who may work on it comes before any pressure.</summary>
public static class SeveralPieces
{
    /// <summary>The rule of a rim that is of several pieces.</summary>
    public const string Rule = "wheel.multi-piece";

    /// <summary>The rule of one that nobody looked at and that may be.</summary>
    public const string NotKnownRule = "wheel.pieces-not-known";

    /// <summary>What stands before every number and every other word about such a wheel.</summary>
    public const string Stop = "Stop: a rim of several pieces. Nobody lets air out, puts air in, loosens or demounts it but people trained and licensed for it, with the rim maker's chart and a restraining device (cage): 29 CFR 1910.177, the makers' instructions and the local rules. Refer it to a shop that has all of these.";

    /// <summary>The same where nobody looked yet.</summary>
    public const string LookFirst = "Stop: nobody looked whether this rim is of one piece, and tyres of this kind stand on rims with a lock ring or side ring. Look before any air goes in or out; with a ring or two halves it is for people trained and licensed for it, in a restraining device (cage): 29 CFR 1910.177.";

    /// <summary>Beside the stop, for those who do the work.</summary>
    public const string Manner = "Let all air out by taking out the valve core before anything is loosened; inflate in a restraining device only; stay out of the trajectory; no hammering on a ring under pressure.";

    /// <summary>The finding of one assembly, refer; null where its rim is of one piece, or where nothing speaks for another.</summary>
    /// <param name="subject">The vehicle.</param>
    /// <param name="assembly">The assembly.</param>
    /// <source>29 CFR 1910.177: training, restraint, parts and procedure for multi-piece wheels (read); what is asked where nobody looked: common practice</source>
    public static Finding? Finding(FittedVehicle subject, Assembly assembly)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(assembly);
        var (name, measured, stop) = WheelKind.Pieces(assembly.Wheel, assembly.Tyre, subject.Vehicle.VehicleClass) switch
        {
            RimPieces.Several => (Rule, "a rim of several pieces", Stop),
            RimPieces.LikelySeveral => (NotKnownRule, "rim perhaps of several pieces, nobody looked", LookFirst),
            RimPieces.One or RimPieces.NotKnown => (null, null, null),
        };
        if (name is null)
        {
            return null;
        }

        var rule = subject.InForce.Of(name, subject);
        return new Finding(rule.Rule, rule.Category, assembly.Position.ToString(), Amount.Word(measured!), null, rule.Source, rule.Action) { Cautions = [stop!, Manner] };
    }
}
