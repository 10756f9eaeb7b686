namespace ProcScript.Fuzz.Inputs;

/// <summary>A stretch of another text in the middle of this one, in place of some of it.</summary>
internal sealed record Splice() : InputSort("splice")
{
    /// <inheritdoc/>
    protected override string Change(string text, Random random, SeedLibraries seeds)
    {
        var other = seeds.Any(random);
        var from = other.Files[random.GetItems(other.Sources.AsSpan(), 1)[0]];
        var (begin, end) = Stretch(from, random);
        var (gone, rest) = Stretch(text, random);
        return string.Concat(text.AsSpan(0, gone), from.AsSpan(begin..end), text.AsSpan(random.Next(2) == 0 ? gone : rest));
    }

    private static (int Begin, int End) Stretch(string text, Random random)
    {
        var begin = random.Next(text.Length + 1);
        return (begin, begin + random.Next(Math.Min(400, text.Length - begin) + 1));
    }
}
