namespace ProcScript.Syntax.Findings;

/// <summary>The page of a rule, as <c>explain</c> prints it. Both samples are compiled by a test.</summary>
/// <param name="What">What the finding says.</param>
/// <param name="Why">What goes wrong at the machine.</param>
/// <param name="Wrong">A library of one file in which the rule fires, and no other.</param>
/// <param name="Right">The same, mended: nothing fires.</param>
public sealed record RulePage(string What, string Why, string Wrong, string Right);
