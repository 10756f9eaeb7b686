namespace ProcScript.Fuzz.Inputs;

/// <summary>Whole lines lost, doubled, moved, or taken from somewhere else.</summary>
internal sealed record LineDamage() : InputSort("line")
{
    /// <inheritdoc/>
    protected override string Change(string text, Random random, SeedLibraries seeds)
    {
        List<string> lines = [.. text.Split('\n')];
        for (var times = 1 + random.Next(4); times > 0 && lines.Count > 0; times--)
        {
            var (at, other) = (random.Next(lines.Count), random.Next(lines.Count));
            switch (random.Next(4))
            {
                case 0:
                    lines.RemoveAt(at);
                    break;
                case 1:
                    lines.Insert(at, lines[other]);
                    break;
                case 2:
                    (lines[at], lines[other]) = (lines[other], lines[at]);
                    break;
                default:
                    lines.Insert(at, seeds.Lines[random.Next(seeds.Lines.Length)]);
                    break;
            }
        }

        return string.Join('\n', lines);
    }
}
