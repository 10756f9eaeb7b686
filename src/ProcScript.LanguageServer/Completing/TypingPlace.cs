using System.Collections.Immutable;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Completing;

/// <summary>Where somebody types, as the grammar reads what stands before; the sentence itself is not there yet and its tree is a guess.</summary>
/// <param name="Grammar">What the grammar takes there.</param>
internal sealed record TypingPlace(WritingPlace Grammar)
{
    /// <summary>The block of an action on an item.</summary>
    public const string Action = "(action)";

    /// <summary>The block of a measurement, task, check, record or pause.</summary>
    public const string TextAction = "(text)";

    /// <summary>The block in an action that says what it is like in the refit.</summary>
    public const string ActionInRefit = "(refit)";

    private static readonly ImmutableHashSet<string> Blocks =
        ["file", "propertyBlock", "controlBlock", "memberBlock", "procedureBlock", "stepBlock", "ruleBlock", "testBlock"];

    /// <summary>The rules of the innermost sentence and of all around it, the innermost first.</summary>
    public ImmutableArray<WritingFrame> Frames { get; } = Grammar.Next is [var next, ..] ? next.Frames : [];

    /// <summary>
    /// The word that opened the block: <c>stage</c>, <c>work</c>, <c>part</c> …, or one of the names above; empty outside of all.
    /// </summary>
    public string Block => BlockOf(Frames);

    /// <summary>The block that a frame stands in.</summary>
    public static string BlockOf(ImmutableArray<WritingFrame> frames)
    {
        for (var i = 0; i + 1 < frames.Length; i++)
        {
            if (frames[i].IsBegun && Blocks.Contains(frames[i].Rule) && Name(frames[i + 1]) is { } name)
            {
                return name;
            }
        }

        return "";
    }

    /// <summary>Reads the place of an offset.</summary>
    public static TypingPlace At(Asked asked, int offset) =>
        new(WritingPlace.At(asked.Tree.Text.Content, JobsInText.DeclarationAt(asked, offset)?.Span.Start ?? 0, offset));

    /// <summary>The innermost rule of a name that is open there.</summary>
    public static WritingFrame? Find(ImmutableArray<WritingFrame> frames, params ReadOnlySpan<string> rules)
    {
        foreach (var frame in frames)
        {
            if (rules.Contains(frame.Rule))
            {
                return frame;
            }
        }

        return null;
    }

    private static string? Name(WritingFrame owner) => owner.Rule switch
    {
        "catalogDeclaration" or "jointDeclaration" or "inlineCover" or "clause" => owner.Words.FirstOrDefault(),
        "machineDeclaration" => "machine",
        "partDeclaration" => "part",
        "energyDeclaration" => "energy",
        "fluidDeclaration" => "fluid",
        "controlDeclaration" => "control",
        "procedureDeclaration" => "procedure",
        "property" => "verify",
        "stage" => "stage",
        "workBlock" => "work",
        "refitRules" => "refit",
        "testRule" => "test",
        "deed" => Action,
        "textAction" or "recordAction" or "pauseAction" or "checkRule" or "pauseRule" => TextAction,
        "refitProperty" => ActionInRefit,

        // A branch holds what the block around it holds.
        _ => null,
    };
}
