using System.Xml.Linq;

namespace Trundle.Rules.Tests;

/// <summary>The checkout as files, for the rules that are told by reading them.</summary>
internal static class House
{
    public static string Root { get; } = Find();

    public static IEnumerable<string> Files(string folder, params string[] patterns) =>
        patterns.SelectMany(p => Directory.EnumerateFiles(Path.Combine(Root, folder), p, SearchOption.AllDirectories))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}artifacts{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                && !f.Contains($"{Path.DirectorySeparatorChar}node_modules{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                && !f.Contains($"{Path.DirectorySeparatorChar}.git{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    public static string Short(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');

    public static IReadOnlyList<string> References(string project) =>
        [.. XDocument.Load(Path.Combine(Root, "src", project, project + ".csproj"))
            .Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(((string)r.Attribute("Include")!).Replace('\\', '/')))
            .Order(StringComparer.Ordinal)];

    private static string Find()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Trundle.slnx")))
            {
                return at.FullName;
            }
        }

        throw new InvalidOperationException("Trundle.slnx was not found above the test.");
    }
}
