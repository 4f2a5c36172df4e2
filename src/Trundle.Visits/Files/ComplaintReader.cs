using Trundle.Engine.Complaint;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads what the driver says of a complaint: <c>vehicle.complaintDetail</c>.</summary>
public static class ComplaintReader
{
    /// <summary>The key in the vehicle.</summary>
    public const string Key = "complaintDetail";

    /// <summary>Reads the answers, each by the words of its question. What cannot be so together is refused, since the model would weigh both.</summary>
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
        var detail = new ComplaintDetail(given, at);
        if (ComplaintContradiction.In(detail) is { } both)
        {
            o.Wrong(both.Key, "complaint-contradicts", $"'{both.Key}' says “{both.Said}” and '{both.Other}' says “{both.OtherSaid}”; both cannot be so: {both.Why}. Ask the driver again, and leave out what nobody is sure of.");
        }

        return detail;
    }
}
