namespace Trundle.Engine;

/// <summary>What computed a result: kept beside every recorded outcome, so that an old record can be told from a new one.</summary>
public static class EngineVersion
{
    /// <summary>The engine's version.</summary>
    public static string Engine { get; } = typeof(EngineVersion).Assembly.GetName().Version!.ToString(3);

    /// <summary>The edition of the tables and figures that the engine carries.</summary>
    public const string Tables = "2026-11";
}
