using ProcScript.Analysis.Messages;

namespace ProcScript.Cards.Words;

/// <summary>How an energy stands and what becomes of it, as the head of a card says it.</summary>
internal static class EnergyWords
{
    /// <summary>The word that is printed large; a state without one of its own stands as it is.</summary>
    public static string State(string state, Wordbook book) => state is "live" or "isolated" or "unproved" ? book.Say($"energy.{state}") : state;

    /// <summary>What a step does to it, behind <c>it</c> and before the step's number.</summary>
    public static string Turn(string from, string state, Wordbook book) => book.Say((from, state) switch
    {
        (_, "live") => "turn.comes-back",
        ("unproved", "isolated") => "turn.proved",
        (_, "unproved") => "turn.unproved",
        _ => "turn.isolated",
    });
}
