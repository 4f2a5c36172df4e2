using Trundle.Engine.Instruments;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;

namespace Trundle.Store;

/// <summary>What an instrument is called and since when it is in use.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Identification">Its serial number or mark, or null.</param>
/// <param name="InUseFrom">Since when it is in use.</param>
/// <param name="OutOfUseFrom">Since when it is not, or null.</param>
public sealed record InstrumentDetails(string Name, string? Identification, DateOnly InUseFrom, DateOnly? OutOfUseFrom);

/// <summary>Who records, and when.</summary>
/// <param name="Name">The person's name.</param>
/// <param name="Role">What the person is.</param>
/// <param name="At">The time.</param>
public sealed record Recorder(string Name, Role Role, DateTimeOffset At);

/// <summary>A record to be kept.</summary>
/// <param name="Id">Made with the form, so that it is taken once.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="On">The day it is about.</param>
/// <param name="Due">When the next check is due, or null.</param>
/// <param name="Body">As typed, as JSON.</param>
/// <param name="Supersedes">The record that it stands in place of, or null.</param>
public sealed record NewInstrumentRecord(Guid Id, InstrumentRecordKind Kind, DateOnly On, DateOnly? Due, string Body, Guid? Supersedes);

/// <summary>A record as kept.</summary>
/// <param name="Id">Its identifier.</param>
/// <param name="Sequence">The order in which the store took the records.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="On">The day it is about.</param>
/// <param name="Due">When the next check is due, or null.</param>
/// <param name="Body">As typed, as JSON.</param>
/// <param name="Operation">The operation that reckoned it, or null.</param>
/// <param name="Answer">Its answer, as JSON, or null.</param>
/// <param name="Figures">The answer in lines for a person.</param>
/// <param name="Verdict">What it says, or null where it is no check.</param>
/// <param name="EngineVersion">What reckoned it.</param>
/// <param name="TableEdition">The edition of the tables.</param>
/// <param name="By">By whom.</param>
/// <param name="Role">What that person was.</param>
/// <param name="At">When it was recorded.</param>
/// <param name="Supersedes">The record that it stands in place of, or null.</param>
public sealed record InstrumentRecord(
    Guid Id, long Sequence, InstrumentRecordKind Kind, DateOnly On, DateOnly? Due, string Body, string? Operation, string? Answer, IReadOnlyList<string> Figures,
    InstrumentVerdict? Verdict, string EngineVersion, string TableEdition, string By, Role Role, DateTimeOffset At, Guid? Supersedes);

/// <summary>An instrument with every record in the order in which the store took them.</summary>
/// <param name="Instrument">As its newest records leave it.</param>
/// <param name="Records">Every record, those too that another stands in place of.</param>
public sealed record StoredInstrument(Instrument Instrument, IReadOnlyList<InstrumentRecord> Records)
{
    /// <summary>True where a later record stands in place of this one.</summary>
    public bool IsSuperseded(InstrumentRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return Records.Any(r => r.Supersedes == record.Id);
    }
}
