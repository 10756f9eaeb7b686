using ProcScript.Analysis.Messages;

namespace ProcScript.Cards.Words;

/// <summary>The lines of making an energy safe and of bringing it back, as a card heads them.</summary>
internal static class SafetyWords
{
    /// <summary>The heading; an action without one of its own stands as it is.</summary>
    public static string Of(string action, Wordbook book)
    {
        var key = $"line.{action.Replace(' ', '-')}";
        return book.Has(key) ? book.Say(key) : action;
    }
}
