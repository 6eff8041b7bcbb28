package varanid.intake.scoring;

/** "If this one is reassuring, that one is too": fills a missing answer, and makes contradictions visible. */
final class ImplicationRules {

    final int finding;
    final int then;
    final ChecklistDraft.Implication draft;

    ImplicationRules(Checklist checklist, ChecklistDraft.Implication draft) {
        this.draft = draft;
        finding = checklist.indexOf(draft.finding());
        then = checklist.indexOf(draft.then());
    }
}
