namespace ProcScript.Fuzz.Inputs;

/// <summary>One wrong letter, as a hand types it: left out, doubled, swapped with its neighbour, another in its place, or one too many.</summary>
internal sealed record LetterTypo() : InputSort("letter")
{
    private const string Letters = "abcdefghijklmnopqrstuvwxyz0123456789_.,:;-\"'{}[]()×µé ";

    /// <inheritdoc/>
    protected override string Change(string text, Random random, SeedLibraries seeds)
    {
        if (text.Length < 2)
        {
            return text;
        }

        var at = random.Next(text.Length - 1);
        var letter = Letters[random.Next(Letters.Length)].ToString();
        return random.Next(5) switch
        {
            0 => text.Remove(at, 1),
            1 => text.Insert(at, text[at].ToString()),
            2 => text.Remove(at, 2).Insert(at, $"{text[at + 1]}{text[at]}"),
            3 => text.Remove(at, 1).Insert(at, letter),
            _ => text.Insert(at, letter),
        };
    }
}
