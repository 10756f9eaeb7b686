using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Tests.Samples;

/// <summary>The map of the sample job.</summary>
internal static class SampleMap
{
    public static PlanMap Evaporator { get; } = new(
        [
            new PlanMapNode("seat", "operator seat", 8, "off", false),
            new PlanMapNode("pillar_trim[left]", "left pillar trim", 12, "off", false),
            new PlanMapNode("pillar_trim[right]", "right pillar trim", 14, "off", false),
            new PlanMapNode("headliner", "headliner", 18, "off", false),
            new PlanMapNode("console", "overhead console with the radio and both speakers", 17, "aside", false),
            new PlanMapNode("roof", "roof panel", 23, "off", false),
            new PlanMapNode("duct", "air duct", 0, "stays", false),
            new PlanMapNode("evaporator", "evaporator", 27, "off", true),
        ],
        [
            new PlanMapEdge("seat", "headliner"),
            new PlanMapEdge("pillar_trim[left]", "headliner"),
            new PlanMapEdge("pillar_trim[right]", "headliner"),
            new PlanMapEdge("headliner", "console"),
            new PlanMapEdge("headliner", "evaporator"),
            new PlanMapEdge("roof", "evaporator"),
            new PlanMapEdge("evaporator", "duct"),
            new PlanMapEdge("pillar_trim[left]", "duct"),
        ]);
}
