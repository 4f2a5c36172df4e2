using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Frame;

/// <summary>The addresses of the bay's pages: /bay/(visit)/(leg)/(place)/(step), and # a field.</summary>
public static class Places
{
    /// <summary>The page of a leg, or of a place on it.</summary>
    public static string Of(Guid visit, Leg leg, string? place = null, string? step = null) =>
        $"/bay/{visit:D}/{leg.Key()}{(place is null ? "" : $"/{place}")}{(step is null ? "" : $"/{step}")}";

    /// <summary>The page on which a field is entered, and the field on it.</summary>
    public static string OfField(Guid visit, Leg leg, string? position, string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        var place = leg switch
        {
            Leg.Arrive => ArrivePlace(field),
            Leg.LookOver => position,
            Leg.Plan => field.StartsWith("work.rotation", StringComparison.Ordinal) ? "rotation" : field.StartsWith("work.jobs", StringComparison.Ordinal) || field.StartsWith("work.renewed", StringComparison.Ordinal) ? "jobs" : null,
            Leg.OffTheCar or Leg.Refit or Leg.Prove => position ?? "vehicle",
            Leg.HandBack => null,
        };
        return $"{Of(visit, leg, place)}#{FieldPart.IdOf(field)}";
    }

    /// <summary>Choosing who enters and in which units.</summary>
    public static string Who(Guid visit) => $"/bay/{visit:D}/who";

    /// <summary>Where somebody signs in, and comes back from to the page that stands open.</summary>
    public static string SignIn(Microsoft.AspNetCore.Components.NavigationManager navigation)
    {
        ArgumentNullException.ThrowIfNull(navigation);
        return $"/sign-in?to={Uri.EscapeDataString(new Uri(navigation.Uri).AbsolutePath)}";
    }

    /// <summary>A tool that belongs to no visit.</summary>
    public static string Tool(string key) => $"/bay/tools/{key}";

    /// <summary>A tool at a wheel of a visit.</summary>
    public static string AtWheel(Guid visit, Trundle.Engine.Vehicles.Position position, string key) => $"/bay/{visit:D}/{Wheel}/{position}/{key}";

    /// <summary>The place on arrive where the vehicle itself is looked at.</summary>
    public const string Came = "came";

    /// <summary>What stands in the place of a leg in the address of a tool at a wheel.</summary>
    public const string Wheel = "wheel";

    /// <summary>A visit's sheet as a PDF: for the customer or for the file, on A4 or Letter.</summary>
    public static string Sheet(Guid visit, string reader, string paper) => $"/api/v1/visits/{visit:D}/sheet.pdf?for={reader}&paper={paper}";

    /// <summary>The visit's file, as the command reads it.</summary>
    public static string File(Guid visit) => $"/api/v1/visits/{visit:D}/file.json";

    private static string? ArrivePlace(string field)
    {
        var parts = field.Split('.');
        return parts is ["vehicle", "axles", var index, ..] && int.TryParse(index, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var axle)
            ? FormattableString.Invariant($"axle-{axle + 1}")
            : parts is ["vehicle", "spare", ..] ? "spare"
            : parts is ["arrival", ..] ? Came : null;
    }
}
