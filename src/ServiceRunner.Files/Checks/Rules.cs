using ServiceRunner.Files.Checks.Dangers;
using ServiceRunner.Files.Checks.Oiling;
using ServiceRunner.Files.Checks.Order;
using ServiceRunner.Files.Checks.Parts;
using ServiceRunner.Files.Checks.Reading;
using ServiceRunner.Files.Checks.References;
using ServiceRunner.Files.Checks.Workshops;

namespace ServiceRunner.Files.Checks;

/// <summary>Every rule, in the order in which docs/diagnostics.md has them. A new rule is written down here by hand.</summary>
public static class Rules
{
    /// <summary>All rules.</summary>
    public static readonly IReadOnlyList<Rule> All =
    [
        // How a file is written.
        AmbiguousNumber.Rule, BadDuration.Rule, BadName.Rule, BadUnit.Rule, CannotOpen.Rule, ConfirmYes.Rule, ControlCharacter.Rule,
        DuplicateKey.Rule, EmptyFile.Rule, FileTooBig.Rule, MissingKey.Rule, NeitherKind.Rule, NotANumber.Rule, NotText.Rule,
        NotUtf8.Rule, SeveralClocks.Rule, TakeInCircle.Rule, TakeInConflict.Rule, TakeInFaulty.Rule, TakeInGroups.Rule,
        TakeInUnknown.Rule, TooMuch.Rule, UnknownFormat.Rule, UnknownKey.Rule, UnknownWord.Rule, WindowOrder.Rule, WrongForm.Rule,
        WrongKind.Rule, YamlFeature.Rule, YamlSyntax.Rule,
        // Names that mean something elsewhere.
        DuplicateId.Rule, NoRepair.Rule, SameProcedure.Rule, SheetUnits.Rule, UnknownAnswer.Rule, UnknownFact.Rule, UnknownFinding.Rule, UnknownMeasure.Rule, UnknownPart.Rule, UnknownPoint.Rule,
        UnknownProcedure.Rule, UnknownStage.Rule, UnknownStep.Rule,
        // Parts.
        FittedBeforeRemoved.Rule, FittedTwice.Rule, NeverDried.Rule, NeverFitted.Rule, NeverMentioned.Rule, RemovedTwice.Rule,
        StaysRemoved.Rule, UnderCircle.Rule, UnderOrder.Rule,
        // Oiling points.
        DryNeverSeen.Rule, DryPointServed.Rule, NotADryPoint.Rule, PointNeverServed.Rule, PointOffMap.Rule, PointOrder.Rule, PointServedTwice.Rule,
        // Order and power.
        UnderPower.Rule, WaitingCircle.Rule,
        // Liquids, heat and cautions.
        CautionOwed.Rule, DelicateInUltrasonic.Rule, DoubtfulSubstance.Rule, FlammableThenHeat.Rule, ForbiddenSubstance.Rule,
        Harmed.Rule, LuminousDisturbed.Rule, ShellacInAlcohol.Rule, ShellacInHeat.Rule,
        // Workshops.
        FlammableDenied.Rule, FlammableInMachine.Rule, SharesOverAll.Rule, UnknownShelf.Rule,
    ];
}
