namespace ProcScript.Cards.Words;

/// <summary>How an energy stands and what becomes of it, as the head of a card says it.</summary>
internal static class EnergyWords
{
    /// <summary>The word that is printed large; a state without one of its own stands as it is.</summary>
    public static string State(string state) => state switch
    {
        "live" => "LIVE",
        "isolated" => "ISOLATED",
        "unproved" => "ISOLATED, NOT PROVED DEAD",
        _ => state,
    };

    /// <summary>What a step does to it, behind <c>it</c> and before the step's number.</summary>
    public static string Turn(string from, string state) => (from, state) switch
    {
        (_, "live") => "comes back at step",
        ("unproved", "isolated") => "is proved dead at step",
        (_, "isolated") => "is isolated at step",
        (_, "unproved") => "is isolated, but not yet proved dead, at step",
        _ => $"is {state} at step",
    };
}
