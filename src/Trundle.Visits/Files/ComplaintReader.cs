using Trundle.Engine.Complaint;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads what the driver says of a complaint: <c>vehicle.complaintDetail</c>.</summary>
public static class ComplaintReader
{
    /// <summary>The key in the vehicle.</summary>
    public const string Key = "complaintDetail";

    /// <summary>Reads the answers, each by the words of its question.</summary>
    public static ComplaintDetail Read(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var given = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var question in ComplaintTable.Questions)
        {
            if (o.Word(question.Key, [.. question.Choices.Select((c, i) => (c.Key, i))]) is { } choice)
            {
                given[question.Key] = question.Choices[choice].Key;
            }
        }

        var at = o.Quantity<Speed>("at", "km/h", Speed.FromKilometresPerHour(1), Speed.FromKilometresPerHour(450));
        o.Done();
        return new ComplaintDetail(given, at);
    }
}
