using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools;

/// <summary>A form about the vehicle of a visit: its file is the visit's own, of which the tool's part is entered here.</summary>
public sealed class VehicleForm(Tool tool, OpenVisit visit) : ToolForm(tool)
{
    private VisitFields _fields = VisitFields.Empty;

    /// <summary>The visit.</summary>
    public OpenVisit Visit { get; } = visit;

    /// <summary>True where nothing of the tool's own part is entered.</summary>
    public override bool IsTold => !Fields.Under(Tool.Key).Any();

    /// <inheritdoc />
    public override UnitHabits Units => Visit.Units;

    /// <inheritdoc />
    public override string Kept => "in this visit";

    /// <inheritdoc />
    public override VisitFields Fields
    {
        get
        {
            // An entry that was only sent changes nothing here, and the sizes are not judged anew for it.
            if (!ReferenceEquals(_fields, Visit.Fields) && Visit.Fields.ChangedSince(_fields).Count > 0)
            {
                _fields = Visit.Fields;
            }

            return _fields;
        }
    }

    /// <inheritdoc />
    public override string? ProblemOf(string field) => Visit.RefusalOf(field) ?? base.ProblemOf(field);

    /// <inheritdoc />
    public override async Task EnterAsync(params (string Field, string Typed)[] texts)
    {
        await Visit.EnterAsync(texts);
        Tell();
    }

    /// <summary>Takes the tool's own part away; the vehicle stays.</summary>
    public override Task ClearAllAsync() => ClearAsync(Tool.Key);
}
