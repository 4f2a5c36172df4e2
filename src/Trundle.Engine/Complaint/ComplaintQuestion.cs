namespace Trundle.Engine.Complaint;

/// <summary>One answer that a question may have.</summary>
/// <param name="Key">Its word in a file.</param>
/// <param name="Text">As a person reads it.</param>
public sealed record ComplaintChoice(string Key, string Text);

/// <summary>One question to the driver.</summary>
/// <param name="Key">Its key in a file.</param>
/// <param name="Text">As it is asked.</param>
/// <param name="Choices">What may be answered.</param>
public sealed record ComplaintQuestion(string Key, string Text, IReadOnlyList<ComplaintChoice> Choices);
