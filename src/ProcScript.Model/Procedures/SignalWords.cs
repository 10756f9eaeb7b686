namespace ProcScript.Model.Procedures;

/// <summary>
/// What the signal words mean, after ANSI Z535 (read in two public digests of Z535.4-2007). Military manuals use CAUTION for damage; this
/// language does not: damage is a NOTICE.
/// </summary>
public static class SignalWords
{
    /// <summary>Whether the word speaks of people who are hurt, and so goes with the safety alert symbol; a notice speaks of damage alone.</summary>
    public static bool IsOfInjury(this SignalWord word) => word != SignalWord.Notice;

    /// <summary>Whether the word speaks of death or a serious injury.</summary>
    public static bool IsOfSeriousInjury(this SignalWord word) => word is SignalWord.Danger or SignalWord.Warning;
}
