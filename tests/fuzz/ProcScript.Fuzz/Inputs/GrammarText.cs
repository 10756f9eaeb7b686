using System.Text;
using Antlr4.Runtime.Atn;
using ProcScript.Syntax.Generated;

namespace ProcScript.Fuzz.Inputs;

/// <summary>A text that the grammar makes: well formed but for what the parser judges by itself, and without sense.</summary>
internal sealed record GrammarText() : InputSort("grammar")
{
    private const int MostWords = 600;
    private const int Deepest = 24;

    private static readonly ATN Grammar = ProcScriptParser._ATN;

    /// <summary>How many words the rest of a rule takes from each state at the least.</summary>
    private static readonly int[] Shortest = FindShortest();

    /// <inheritdoc/>
    protected override string Change(string text, Random random, SeedLibraries seeds)
    {
        var words = new StringBuilder();
        var count = 0;
        Walk(ProcScriptParser.RULE_file, 0);
        return words.ToString();

        void Walk(int rule, int depth)
        {
            ATNState state = Grammar.ruleToStartState[rule];
            while (state is not RuleStopState)
            {
                var way = Way(state, depth);
                if (way is RuleTransition call)
                {
                    Walk(call.ruleIndex, depth + 1);
                    state = call.followState;
                    continue;
                }

                if (way.Label is { } label && !way.IsEpsilon)
                {
                    count++;
                    words.Append(Word(label.ToArray()[random.Next(label.Count)], random, seeds));
                }

                state = way.target;
            }
        }

        // Where there is enough, the way that ends it soonest.
        Transition Way(ATNState state, int depth) => count > MostWords || depth > Deepest
            ? Ways(state).MinBy(way => Cost(way, Shortest))!
            : state.Transition(random.Next(state.NumberOfTransitions));
    }

    private static string Word(int type, Random random, SeedLibraries seeds) => ProcScriptParser.DefaultVocabulary.GetLiteralName(type) is { } literal
        ? $"{literal.Trim('\'')}{(literal is "'{'" or "'}'" ? '\n' : ' ')}"
        : ProcScriptParser.DefaultVocabulary.GetSymbolicName(type) switch
        {
            "STRING" => random.Next(3) == 0 ? "\"2 bar on the gauge\" " : "\"front cover\" ",
            "INTEGER" => random.Next(4) switch { 0 => "0 ", 1 => "8 ", 2 => "41 ", _ => "99999 " },
            "DECIMAL" => "2.5 ",
            "SCREW_SIZE" => "#10 ",
            "PLUS_MINUS" => "+- ",
            "AT_MOST" => "<= ",
            "AT_LEAST" => ">= ",
            "MIDDLE_DOT" => "· ",
            _ => $"{seeds.Words[random.Next(seeds.Words.Length)]} ",
        };

    private static IEnumerable<Transition> Ways(ATNState state) => Enumerable.Range(0, state.NumberOfTransitions).Select(state.Transition);

    private static int Cost(Transition way, int[] shortest) => way is RuleTransition call
        ? Sum(shortest[Grammar.ruleToStartState[call.ruleIndex].stateNumber], shortest[call.followState.stateNumber])
        : Sum(way.IsEpsilon ? 0 : 1, shortest[way.target.stateNumber]);

    private static int Sum(int one, int other) => one == int.MaxValue || other == int.MaxValue ? int.MaxValue : one + other;

    private static int[] FindShortest()
    {
        var shortest = new int[Grammar.states.Count];
        Array.Fill(shortest, int.MaxValue);
        foreach (var state in Grammar.states.OfType<RuleStopState>())
        {
            shortest[state.stateNumber] = 0;
        }

        for (var isChanged = true; isChanged;)
        {
            isChanged = false;
            foreach (var state in Grammar.states.Where(state => state is not (null or RuleStopState) && state.NumberOfTransitions > 0))
            {
                var least = Ways(state).Min(way => Cost(way, shortest));
                isChanged |= least < shortest[state.stateNumber];
                shortest[state.stateNumber] = Math.Min(least, shortest[state.stateNumber]);
            }
        }

        return shortest;
    }
}
