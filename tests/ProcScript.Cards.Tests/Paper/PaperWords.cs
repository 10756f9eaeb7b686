using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Tests.Paper;

/// <summary>
/// The words by which somebody finds his way on a page of one language. They are written down here a second time, and taken from no file of messages.
/// </summary>
internal sealed record PaperWords
{
    /// <summary>English.</summary>
    public static PaperWords English { get; } = new()
    {
        Check = "Check",
        Set = "set",
        Further = "further",
        Then = "then",
        Replaces = @", replaces? (?:the one|those) .*$",
        Signals = ["DANGER", "WARNING", "CAUTION", "NOTICE"],
        WholeJob = "whole job",
        OnTheWholeJob = ", on the whole job",
        AtTheSteps = ", at the steps that say so",
        Restore = "^Restore ",
        Wrench = "torque wrench",
    };

    /// <summary>German.</summary>
    public static PaperWords German { get; } = new()
    {
        Check = "Prüfen",
        Set = "einstellen",
        Further = "weiter",
        Then = "dann",
        Replaces = @", (?:ersetzt das|ersetzen die) bei Schritt .*$",
        Signals = ["GEFAHR", "WARNUNG", "VORSICHT", "HINWEIS"],
        WholeJob = "ganze Arbeit",
        OnTheWholeJob = ", bei der ganzen Arbeit",
        AtTheSteps = ", bei den Schritten, die es sagen",
        Restore = " wieder einschalten$",
        Wrench = "Drehmomentschlüssel",
    };

    /// <summary>Before what is checked once a step is done.</summary>
    public required string Check { get; init; }

    /// <summary>Before what a wrench is set to.</summary>
    public required string Set { get; init; }

    /// <summary>Behind an angle.</summary>
    public required string Further { get; init; }

    /// <summary>Before a later stage of a torque.</summary>
    public required string Then { get; init; }

    /// <summary>What stands behind a new part.</summary>
    public required string Replaces { get; init; }

    /// <summary>The signal words, the worst first.</summary>
    public required string[] Signals { get; init; }

    /// <summary>In the list of tools, of one that is not for single steps.</summary>
    public required string WholeJob { get; init; }

    /// <summary>Behind what is worn all the time.</summary>
    public required string OnTheWholeJob { get; init; }

    /// <summary>Behind what is worn now and then.</summary>
    public required string AtTheSteps { get; init; }

    /// <summary>How a step reads that brings an energy back.</summary>
    public required string Restore { get; init; }

    /// <summary>A torque wrench that is in no catalog.</summary>
    public required string Wrench { get; init; }

    /// <summary>Whether what authors and cautions say to wear is told in English.</summary>
    public bool IsEnglish => this == English;

    /// <summary>The words of a plan's language.</summary>
    public static PaperWords Of(Plan plan) => plan.Language == "de" ? German : English;

    /// <summary>A signal word of the plan as it is printed.</summary>
    public string Signal(string word) => Signals[Array.IndexOf(["danger", "warning", "caution", "notice"], word)];
}
