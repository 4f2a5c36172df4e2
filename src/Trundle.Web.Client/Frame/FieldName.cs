using System.Globalization;
using System.Text;
using Trundle.Engine.Vehicles;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Frame;

/// <summary>A field's path as a person reads it: <c>fitted.1L.tread.inner.0</c> is "Front left, tread, inner, 1".</summary>
public static class FieldName
{
    private static readonly string[] Silent = ["fitted", "vehicle", "work", "steps"];

    /// <summary>The path in words, its place on the vehicle first.</summary>
    public static string Of(string field, VisitReading reading)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(reading);
        var words = field.Split('.').SkipWhile((name, i) => i < 2 && Silent.Contains(name)).Select(name =>
            int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? (n + 1).ToString(CultureInfo.InvariantCulture)
            : Position.Read(name) is { IsRead: true } position ? reading.Name(position.Value)
            : Parted(name));
        return string.Join(", ", words).Capital();
    }

    /// <summary>A key's parts: <c>bead-broken</c> and <c>maximumPressure</c> are two words each.</summary>
    private static string Parted(string name)
    {
        var text = new StringBuilder();
        foreach (var c in name)
        {
            if (char.IsAsciiLetterUpper(c) && text.Length > 0)
            {
                text.Append(' ');
            }

            text.Append(c is '-' or '@' or '_' ? ' ' : char.ToLowerInvariant(c));
        }

        return text.ToString();
    }
}
