using System.Text.RegularExpressions;

namespace Trundle.Rules.Tests;

/// <summary>Pictures of the guide: each that is named is there with words for who cannot see it, each that is there is named, and none is heavy.</summary>
public sealed partial class GuidePicturesTests
{
    private const int HeaviestBytes = 200_000;

    private static readonly IReadOnlyList<(string Page, string Words, string Picture)> Named =
        [.. House.Files(Path.Combine("docs", "guide"), "*.md").SelectMany(f => Picture().Matches(File.ReadAllText(f)).Select(m => (House.Short(f), m.Groups["words"].Value, m.Groups["file"].Value)))];

    [Fact]
    public void A_picture_that_is_named_is_there_and_has_its_words()
    {
        Named.ShouldNotBeEmpty();
        foreach (var (page, words, picture) in Named)
        {
            File.Exists(Path.Combine(House.Root, "docs", "guide", picture)).ShouldBeTrue($"{page} names {picture}");
            words.Length.ShouldBeGreaterThan(20, $"{page}: {picture} is said in words");
        }
    }

    [Fact]
    public void A_picture_that_is_there_is_named_and_light()
    {
        foreach (var file in House.Files(Path.Combine("docs", "guide", "pictures"), "*"))
        {
            Named.Select(n => Path.GetFileName(n.Picture)).ShouldContain(Path.GetFileName(file), House.Short(file));
            new FileInfo(file).Length.ShouldBeLessThan(HeaviestBytes, House.Short(file));
        }
    }

    [GeneratedRegex(@"!\[(?<words>[^\]]*)\]\((?<file>pictures/[^)]+)\)")]
    private static partial Regex Picture();
}
