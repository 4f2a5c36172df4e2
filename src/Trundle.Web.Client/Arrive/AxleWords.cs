using System.Globalization;

namespace Trundle.Web.Client.Arrive;

/// <summary>Axles in words.</summary>
public static class AxleWords
{
    /// <summary>"front axle" and "rear axle" of two, else "axle 2".</summary>
    public static string Of(int axle, int axles) => axles == 2
        ? axle == 1 ? "front axle" : "rear axle"
        : string.Create(CultureInfo.InvariantCulture, $"axle {axle}");
}
