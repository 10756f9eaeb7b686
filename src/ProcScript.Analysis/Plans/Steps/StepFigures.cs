using ProcScript.Analysis.Figures;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Model.Figures;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// Which pictures stand at which step: those of its own block, and those of an item at the first step that takes it off and at the first that
/// puts it back.
/// </summary>
internal sealed class StepFigures
{
    private readonly Library _library;
    private readonly PathSettings _settings;
    private readonly Dictionary<int, MachineItem> _items = [];

    private StepFigures(Library library, PathSettings settings) => (_library, _settings) = (library, settings);

    /// <summary>Sorts the pictures of items.</summary>
    public static StepFigures Of(Library library, PathSettings settings, IEnumerable<PlannedStep> steps)
    {
        StepFigures figures = new(library, settings);
        HashSet<(MachineItem, PlanPhase)> shown = [];
        foreach (var step in steps)
        {
            if (step.Target is { Figures.IsEmpty: false } item && step.Phase != PlanPhase.Work && Moves(step.Verb) && shown.Add((item, step.Phase)))
            {
                figures._items.Add(step.Number, item);
            }
        }

        return figures;
    }

    /// <summary>The pictures at a step, each file once.</summary>
    public IEnumerable<PlanFigure> At(PlannedStep step)
    {
        var ofItem = _items.TryGetValue(step.Number, out var item)
            ? item.Figures.Where(figure => step.Phase == PlanPhase.Refit ? figure.IsOfRefit : figure.IsOfStrip)
            : [];
        return step.Details.Figures.Concat(ofItem).DistinctBy(figure => figure.Path, StringComparer.Ordinal).Select(Written);
    }

    /// <summary>Whether an action takes something off or puts it back, and is not only done at it.</summary>
    private static bool Moves(Verb verb) => verb is not (Verb.Support or Verb.Unsupport or Verb.Retorque);

    private PlanFigure Written(Figure figure)
    {
        var examined = FigureCheck.Examined(_library, _settings, figure);
        return examined.Trouble != FigureTrouble.None
            ? new PlanFigure(figure.Path, figure.Caption)
            : new PlanFigure(figure.Path, figure.Caption)
            {
                Type = FigureFormats.MediaType(examined.Format),
                Hash = examined.Hash,
                Width = examined.Width,
                Height = examined.Height,
                Content = examined.Content,
            };
    }
}
