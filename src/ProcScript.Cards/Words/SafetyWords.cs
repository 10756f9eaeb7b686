namespace ProcScript.Cards.Words;

/// <summary>The lines of making an energy safe and of bringing it back, as a card heads them.</summary>
internal static class SafetyWords
{
    /// <summary>The heading; an action without one of its own stands as it is.</summary>
    public static string Of(string action) => action switch
    {
        "prepare" => "Prepare",
        "shut down" => "Shut down",
        "isolate" => "Isolate",
        "lock" => "Lock and tag",
        "release" => "Release what is stored",
        "wait" => "Wait",
        "verify" => "Verify",
        "area" => "Area clear",
        "whole" => "Machine whole",
        "people" => "People clear",
        "locks" => "Locks off",
        "tell" => "People told",
        _ => action,
    };
}
