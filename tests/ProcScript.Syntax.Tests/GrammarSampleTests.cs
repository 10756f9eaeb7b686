using System.Reflection;
using System.Text.RegularExpressions;
using Antlr4.Runtime;
using Antlr4.Runtime.Misc;
using ProcScript.Syntax.Generated;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Tests;

/// <summary>The sentences that stand in the grammar above its rules.</summary>
public sealed partial class GrammarSampleTests
{
    public static TheoryData<string, bool, string> Samples()
    {
        var samples = new TheoryData<string, bool, string>();
        foreach (Match rule in RuleWithSamples().Matches(Sample.Read("ProcScriptParser.g4").ReplaceLineEndings("\n")))
        {
            for (var i = 0; i < rule.Groups["text"].Captures.Count; i++)
            {
                var isGood = rule.Groups["sort"].Captures[i].Value == "ok";
                samples.Add(rule.Groups["rule"].Value, isGood, rule.Groups["text"].Captures[i].Value.Trim());
            }
        }

        return samples;
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void A_rule_takes_its_good_samples_and_no_other(string rule, bool isGood, string sample)
    {
        Assert.Equal(isGood, Takes(rule, sample));
    }

    private static bool Takes(string rule, string sample)
    {
        var text = new SourceText("a.proc", sample);
        var lexemes = FileLexer.Read(text, new FindingLog(text), CancellationToken.None).Lexemes;
        var tokens = new ParserTokenStream(lexemes, sample.Length, CancellationToken.None);
        var parser = new ProcScriptParser(tokens, TextWriter.Null, TextWriter.Null) { ErrorHandler = new BailErrorStrategy() };
        parser.RemoveErrorListeners();
        try
        {
            typeof(ProcScriptParser).GetMethod(rule, Type.EmptyTypes)!.Invoke(parser, null);
        }
        catch (TargetInvocationException failure) when (failure.InnerException is ParseCanceledException)
        {
            return false;
        }

        return tokens.LA(1) == TokenConstants.EOF;
    }

    [GeneratedRegex(@"(?m)(?:^// (?<sort>ok|bad):(?<text>.*)\n)+(?<rule>\w+)\s*:")]
    private static partial Regex RuleWithSamples();
}
