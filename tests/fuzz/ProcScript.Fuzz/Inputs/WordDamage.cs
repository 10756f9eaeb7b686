using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.Fuzz.Inputs;

/// <summary>Words of the language, names and texts put, lost, swapped and doubled where they do not belong.</summary>
internal sealed record WordDamage() : InputSort("word")
{
    /// <inheritdoc/>
    protected override string Change(string text, Random random, SeedLibraries seeds)
    {
        List<string> tokens = [.. SyntaxTree.Parse(new SourceText("a.proc", text)).Tokens.Select(token => text.Substring(token.Span.Start, token.Span.Length))];
        for (var times = 1 + random.Next(4); times > 0 && tokens.Count > 0; times--)
        {
            var (at, other) = (random.Next(tokens.Count), random.Next(tokens.Count));
            switch (random.Next(5))
            {
                case 0:
                    tokens.RemoveAt(at);
                    break;
                case 1:
                    tokens.Insert(at, $"{tokens[other]} ");
                    break;
                case 2:
                    (tokens[at], tokens[other]) = (tokens[other], tokens[at]);
                    break;
                case 3:
                    tokens[at] = tokens[other];
                    break;
                default:
                    tokens[at] = $"{seeds.Words[random.Next(seeds.Words.Length)]} ";
                    break;
            }
        }

        return string.Concat(tokens);
    }
}
