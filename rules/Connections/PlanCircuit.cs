namespace WireCoach.Rules.Connections;

/// <summary>A planned connection as nodes and what lies between them.</summary>
/// <param name="Nodes">Joints first, then capped leads, then nodes inside the motor.</param>
/// <param name="Elements">Coils, parts and plain leads.</param>
public sealed record PlanCircuit(IReadOnlyList<PlanNode> Nodes, IReadOnlyList<PlanElement> Elements);

/// <summary>A point where things meet.</summary>
/// <param name="Id">Its id within the circuit; for a joint its name.</param>
/// <param name="Kind"><c>joint</c>, <c>capped</c> or <c>inside</c>.</param>
/// <param name="Conductor">The line conductor of a joint, or <see langword="null"/>.</param>
public sealed record PlanNode(string Id, string Kind, string? Conductor = null);

/// <summary>What lies between two nodes.</summary>
/// <param name="Id">The coil's or part's id within the layout.</param>
/// <param name="Kind"><c>coil</c>, a part's kind, or <c>lead</c>: a plain wire that comes out.</param>
/// <param name="Role">The winding role of a coil; empty for anything else.</param>
/// <param name="From">Its start.</param>
/// <param name="To">Its finish.</param>
/// <param name="Outside">It lies outside the motor: a capacitor that is wired on.</param>
/// <param name="ChangesWithShaft">It is an armature.</param>
public sealed record PlanElement(string Id, string Kind, string Role, PlanEnd From, PlanEnd To, bool Outside = false, bool ChangesWithShaft = false);

/// <summary>One end of an element.</summary>
/// <param name="Node">The node it is on.</param>
/// <param name="Lead">The person's tag of the lead by which it gets there; <see langword="null"/> inside the motor.</param>
/// <param name="Marking">That lead's marking.</param>
public sealed record PlanEnd(string Node, string? Lead = null, string? Marking = null);
