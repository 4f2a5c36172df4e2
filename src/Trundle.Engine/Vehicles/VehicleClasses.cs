namespace Trundle.Engine.Vehicles;

/// <summary>The classes of vehicle that the in-use rules turn on, in the words of the files.</summary>
public static class VehicleClasses
{
    /// <summary>A car; what a vehicle is taken for where nobody said.</summary>
    public const string Car = "car";

    /// <summary>A motorcycle: one wheel on each axle.</summary>
    public const string Motorcycle = "motorcycle";

    /// <summary>Every class.</summary>
    public static IReadOnlyList<string> All { get; } = [Car, "van", "goods over 3500 kg", "bus", "minibus", Motorcycle, "trailer", "trailer over 3500 kg"];

    /// <summary>True for a trailer of any weight.</summary>
    /// <source>common practice</source>
    public static bool IsTrailer(string vehicleClass) => vehicleClass is "trailer" or "trailer over 3500 kg";
}
