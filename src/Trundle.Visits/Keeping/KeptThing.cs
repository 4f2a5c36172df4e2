using Trundle.Visits.Bay;

namespace Trundle.Visits.Keeping;

/// <summary>One record of a thing that the workshop keeps account of. Records are added; none is changed.</summary>
/// <param name="Id">Made with the form, so that it is taken once.</param>
/// <param name="Kind">Its word.</param>
/// <param name="On">The day it is about.</param>
/// <param name="Body">As typed, as JSON.</param>
/// <param name="By">By whom.</param>
/// <param name="Role">What that person was.</param>
/// <param name="At">When it was recorded.</param>
public sealed record KeptRecord(Guid Id, string Kind, DateOnly On, string Body, string By, Role Role, DateTimeOffset At);

/// <summary>A thing that the workshop keeps account of: a set in storage, or tyres that were sold.</summary>
/// <param name="Id">Made with the form.</param>
/// <param name="Number">As written on labels and paper.</param>
/// <param name="Visit">The visit that it came from, or null.</param>
/// <param name="Records">Every record in the order in which the store took them.</param>
public sealed record KeptThing(Guid Id, string Number, Guid? Visit, IReadOnlyList<KeptRecord> Records);
