namespace ProcScript.Syntax.Findings;

/// <summary>A rule: one file in the room that raises it, with all there is to say of it.</summary>
public abstract class Rule
{
    /// <summary>Code, name, title and default severity.</summary>
    public abstract RuleInfo Info { get; }

    /// <summary>What <c>explain</c> prints.</summary>
    public abstract RulePage Page { get; }

    /// <summary>Whether it knows words of English, and so stays quiet where the shop writes in another language.</summary>
    public virtual bool IsEnglish => false;
}
