using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Mounting;

/// <summary>Of how many pieces a rim is, as far as anybody told.</summary>
public enum RimPieces
{
    /// <summary>Of one: somebody looked, or tyres of this kind sit on no other.</summary>
    One,

    /// <summary>Nobody looked, and nothing speaks for a ring more than against it.</summary>
    NotKnown,

    /// <summary>Nobody looked, and the size, the tube or the stamp speaks for a rim of several pieces.</summary>
    LikelySeveral,

    /// <summary>Of several: split, or with a lock ring or side ring.</summary>
    Several,
}

/// <summary>What kind of wheel it is to the hand that demounts and mounts it. Each answer is yes, no, or null where nobody knows.</summary>
public static class WheelKind
{
    /// <summary>A short sidewall: an aspect ratio of <c>mounting.low-profile</c> or less, as marked.</summary>
    /// <source>the figure names its own (common practice)</source>
    public static bool? IsLowProfile(FittedTyre? tyre) =>
        tyre?.Marking?.Size is not { } size ? null : size.AspectRatioPercent <= Figures.Of("mounting.low-profile").Value;

    /// <summary>Built to run without air: RF in the size designation, the words on the sidewall, or as it was entered.</summary>
    /// <source>UN R30, size designation of run-flat tyres (from memory)</source>
    public static bool? IsRunFlat(FittedTyre? tyre) => tyre?.History.RunFlat == true ? true : tyre?.Marking is null ? null : SidewallMarks.IsRunFlat(tyre);

    /// <summary>
    /// Needs a tube: marked so. Where neither TUBE TYPE nor TUBELESS was entered, a car's, van's or trailer's tyre is taken for tubeless, and of a
    /// motorcycle's, a truck's or one of an old form of size nobody knows.
    /// </summary>
    /// <source>common practice</source>
    public static bool? NeedsTube(FittedTyre? tyre) =>
        tyre?.Marking?.Size is not { } size ? null
        : SidewallMarks.Has(tyre, "TT") ? true
        : SidewallMarks.Has(tyre, "TL") ? false
        : size.TyreClass is TyreClass.Motorcycle or TyreClass.Truck || size.Family is MarkingFamily.Inch or MarkingFamily.Alphanumeric or MarkingFamily.MotorcycleLetter ? null
        : false;

    /// <summary>A truck's or a bus's tyre, by its marking, else by the vehicle's class.</summary>
    /// <source>29 CFR 1910.177 (read in part): large vehicles, not cars and not LT tyres of pick-ups and vans</source>
    public static bool IsTruck(FittedTyre? tyre, string vehicleClass) => tyre?.Marking?.Size is { } size
        ? size.TyreClass == TyreClass.Truck
        : vehicleClass is "goods over 3500 kg" or "bus" or "trailer over 3500 kg";

    /// <summary>A motorcycle's wheel, by the vehicle or by the marking.</summary>
    /// <source>common practice</source>
    public static bool IsMotorcycle(FittedTyre? tyre, string vehicleClass) => vehicleClass == "motorcycle" || tyre?.Marking?.Size.TyreClass == TyreClass.Motorcycle;

    /// <summary>One person does not lift it: above <c>mounting.heavy-wheel</c>, or a truck's.</summary>
    /// <source>the figure names its own (from memory)</source>
    public static bool? IsHeavy(Mass? mass, bool truck) => truck ? true : mass is { } m ? m.Kilograms > Figures.Of("mounting.heavy-wheel").Value : null;

    /// <summary>
    /// A rim of several pieces, as somebody looked. Where nobody did, a car's, van's or light truck's tubeless tyre sits on a rim of one piece;
    /// of a truck's wheel, or one that takes or may take a tube, nobody knows, and it is asked.
    /// </summary>
    /// <source>29 CFR 1910.177(b) (read in part): what counts as a multi-piece wheel; the rest is common practice</source>
    public static bool? IsOfSeveralPieces(Wheel? wheel, FittedTyre? tyre, string vehicleClass) => wheel?.MultiPiece
        ?? (IsTruck(tyre, vehicleClass) || (NeedsTube(tyre) != false && tyre?.Marking is not null) ? null : false);

    /// <summary>
    /// Of how many pieces the rim is. Where nobody looked, a large vehicle's or light truck's tyre with a tube, one of an inch size on a whole
    /// inch rim (7.50R16, 10.00R20: flat-base and semi-drop-centre rims) and a stamp with a '-', SDC or FB in it speak for a ring: one piece is never
    /// taken for granted there. Truck tyres on 15 degree rims (22.5) sit on rims of one piece, and it is still asked.
    /// </summary>
    /// <source>29 CFR 1910.177(b) (read in part); ISO 4000-2: '-' in a rim designation for several pieces (from memory); sizes: common practice</source>
    public static RimPieces Pieces(Wheel? wheel, FittedTyre? tyre, string vehicleClass)
    {
        switch (IsOfSeveralPieces(wheel, tyre, vehicleClass))
        {
            case true:
                return RimPieces.Several;
            case false when wheel?.MultiPiece == false || wheel?.Rim?.MayBeOfSeveralPieces != true || !IsLarge(tyre, vehicleClass):
                return RimPieces.One;
        }

        var wholeInch = tyre?.Marking?.Size is { Family: MarkingFamily.Inch, RimDiameterInches: { } rim } && rim >= 15 && rim == Math.Floor(rim);
        return IsLarge(tyre, vehicleClass) && (wholeInch || NeedsTube(tyre) == true || wheel?.Rim?.MayBeOfSeveralPieces == true) ? RimPieces.LikelySeveral : RimPieces.NotKnown;
    }

    /// <summary>A vehicle or a tyre of the kind that stands on rims of several pieces.</summary>
    private static bool IsLarge(FittedTyre? tyre, string vehicleClass) =>
        vehicleClass is "goods over 3500 kg" or "bus" or "minibus" or "trailer over 3500 kg"
        || tyre?.Marking?.Size.TyreClass is TyreClass.Truck or TyreClass.LightTruck or TyreClass.Commercial;
}
