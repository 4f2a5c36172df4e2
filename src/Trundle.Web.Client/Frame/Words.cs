namespace Trundle.Web.Client.Frame;

/// <summary>A rule's own name as a person reads it: <c>tread.depth</c> is "tread depth".</summary>
public static class Words
{
    /// <summary>The name in words.</summary>
    public static string Of(string rule) => rule.Replace('.', ' ').Replace('-', ' ');
}
