package varanid.intake.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import varanid.intake.checklist.ChecklistReader;

/** What docs/checklist-format.md says that the loader refuses: one broken line each, and several at once. */
class LoaderRefusalsTest {

    private static final ChecklistReader READER = new ChecklistReader();

    @Test
    void acceptsTheChecklistThatTheseTestsBreak() throws IOException {
        assertThat(read(base()).draft().findings()).hasSize(6);
    }

    @ParameterizedTest(name = "{0} -> {1}: {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "masks: [breath]                       | masks: [breth]                        | there is no finding 'breth'",
                "mustSee: [dull]                       | mustSee: [dul]                        | there is no finding 'dul'",
                "{finding: limp, level: present, mean  | {finding: limp, level: gone, mean     | 'gone' is not a level of limp",
                "id: breath\\n    section: body        | id: breath\\n    section: bodie       | 'bodie' is not known",
                "family: weak\\n    question: Is it l  | family: weka\\n    question: Is it l  | 'weka' is not known",
                "conditions: [cold]                    | conditions: [warm]                    | 'warm' is not known",
                "floor: stat                           | floor: now                            | 'now' is not known",
                "outcomes: [stat]                      | outcomes: [now]                       | 'now' is not known",
                "meanwhile: asap                       | meanwhile: soon                       | 'soon' is not known",
                "precaution: {outcome: urgent          | precaution: {outcome: soon            | 'soon' is not known",
                "{from: 8, outcome: urgent             | {from: 8, outcome: soon               | 'soon' is not known",
                "{from: 5, outcome: urgent             | {from: 5, outcome: soon               | 'soon' is not known",
                "when: {lifeStage: [adult]}            | when: {lifeStage: [old]}              | 'old' is not known",
                "when: {lifeStage: [adult]}            | when: {stage: [adult]}                | 'stage' is not known",
                "attributes: {lifeStage: [adult]}}     | attributes: {lifeStage: [old]}}       | 'old' is not known",
                "ifAbsent: unknown                     | ifAbsent: nobody                      | 'nobody' is not known",
                "countsAs: hatchling                   | countsAs: egg                         | 'egg' is not known",
                "values: [adult], route                | values: [old], route                  | 'old' is not known",
                "isolate: contact                      | isolate: touch                        | 'touch' is not known",
                "isolate: air\\n    source             | isolate: wind\\n    source            | 'wind' is not known",
                "route: contact, source                | route: touch, source                  | 'touch' is not known",
                "findings: [exposed], attribute        | findings: [near], attribute           | there is no finding 'near'",
                "floorSource: [X]                      | floorSource: [Y]                      | 'Y' is not known",
                "pointsSource: [X]                     | pointsSource: [Y]                     | 'Y' is not known",
                "then: limp                            | then: lump                            | there is no finding 'lump'",
                "[{finding: condition, level: lean}]   | [{finding: condition, level: thin}]   | 'thin' is not a level of condition",
                "{at: 24, level: right}                | {at: 24, level: nice}                 | 'nice' is not a level of temperature",
                "[[absent, present]]\\n  - id: breath  | [[absent, gone]]\\n  - id: breath     | 'gone' is not a level of limp",
                "limp: [present]}\\n        from: [{at: 0, level: frozen}, {at: 14 | limp: [gone]}\\n        from: [{at: 0, level: frozen}, {at: 14 | 'gone' is not a level of limp",
            })
    void aReferenceToSomethingThatIsNotThere(String line, String broken, String wrong) throws IOException {
        assertThat(faultsOf(replaced(line, broken))).extracting(Fault::wrong).anyMatch(it -> it.contains(wrong));
    }

    @ParameterizedTest(name = "{0} -> {1}: {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "[[fit, lean, wasted], [fit, heavy]]   | [[fit, lean, wasted], [lean, heavy]]  | starts at 'lean'",
                "[[fit, lean, wasted], [fit, heavy]]   | [[fit, lean, wasted]]                 | leave out the level 'heavy'",
                "points: 4, floor: asap, floorSource   | points: 1, floor: asap, floorSource   | 'marked' counts for less than 'mild'",
                "points: 5, floor: asap, isolate: air  | points: 5, isolate: air               | 'marked' counts for less than 'mild'",
                "points: 5, floor: asap, isolate: air  | points: 5, floor: asap                | 'marked' counts for less than 'mild'",
            })
    void aChainThatDoesNotStartAtTheReassuringLevelOrFalls(String line, String broken, String wrong)
            throws IOException {
        assertThat(faultsOf(replaced(line, broken))).extracting(Fault::wrong).anyMatch(it -> it.contains(wrong));
    }

    /** A combination that asks for 'lean' is met by 'wasted' too, but never by 'heavy', however many points it has. */
    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "{code: heavy, points: 1}              | {code: heavy, points: 5}",
                "{code: heavy, points: 1}              | {code: heavy, points: 1, floor: urgent}",
                "{code: heavy, points: 1}              | {code: heavy, points: 1, isolate: air}",
                "{code: lean, points: 1}               | {code: lean, points: 1, isolate: air}",
            })
    void aFindingInWhichNoSingleLevelIsTheWorst(String line, String broken) throws IOException {
        assertThat(faultsOf(replaced(line, broken))).isNotEmpty();
    }

    @Test
    void aFindingWhoseWorstLevelDependsOnTheCombination() throws IOException {
        String broken = replaced("{code: wasted, points: 4}", "{code: wasted, points: 1}")
                .replace("[{finding: condition, level: lean}]", "[{finding: condition, level: heavy}]")
                .replace("{code: lean, points: 1}", "{code: lean, points: 0.5}")
                .replace("{code: wasted, points: 1}", "{code: wasted, points: 2}");

        assertThat(faultsOf(broken))
                .extracting(Fault::wrong)
                .contains("condition: no level is the worst in every respect");
    }

    @Test
    void aBandCaseInWhichNoSingleLevelIsTheWorst() throws IOException {
        String broken = replaced("{code: chilled, points: 1}", "{code: chilled, points: 1, floor: urgent}")
                .replace("{code: frozen, points: 3}", "{code: frozen, points: 3, floor: urgent}")
                .replace(
                        "from: [{at: 0, level: frozen}, {at: 12, level: chilled}, {at: 24, level: right}",
                        "from: [{at: 0, level: chilled}, {at: 24, level: right}");

        assertThat(faultsOf(broken))
                .extracting(Fault::wrong)
                .contains("temperature: no level of this case is the worst in every respect");
    }

    @Test
    void anExplainedLevelThatIsNotTheMildestWorryingOne() throws IOException {
        assertThat(faultsOf(
                        replaced("{finding: dull, level: mild, meanwhile", "{finding: dull, level: marked, meanwhile")))
                .extracting(Fault::wrong)
                .contains("'marked' is not the mildest worrying level of dull");
        assertThat(faultsOf(
                        replaced("{finding: dull, level: mild, meanwhile", "{finding: dull, level: absent, meanwhile")))
                .extracting(Fault::wrong)
                .contains("'absent' is not the mildest worrying level of dull");
    }

    @Test
    void anExcusedLevelWithTheMostUrgentFloorAndTooLittleMeanwhile() throws IOException {
        String wrong = "excuses a level with the most urgent floor and asks for nothing meanwhile";
        assertThat(faultsOf(replaced("level: present, meanwhile: asap", "level: present, meanwhile: urgent")))
                .extracting(Fault::wrong)
                .contains(wrong);
        assertThat(faultsOf(replaced("level: present, meanwhile: asap", "level: present")))
                .extracting(Fault::wrong)
                .contains(wrong);
    }

    @Test
    void anExcuseThatAsksForMoreThanTheWorseLevelDoes() throws IOException {
        assertThat(faultsOf(replaced("level: mild, meanwhile: urgent", "level: mild, meanwhile: stat")))
                .extracting(Fault::wrong)
                .contains("asks for 'stat' while 'mild' is excused, but 'marked', which is worse, does not");
    }

    @Test
    void aMustSeeFindingWhoseWorstLevelIsLessUrgentThanThePrecaution() throws IOException {
        assertThat(faultsOf(replaced("precaution: {outcome: urgent", "precaution: {outcome: stat")))
                .extracting(Fault::wrong)
                .contains(
                        "breath: its worst level is less urgent than the precaution",
                        "dull: its worst level is less urgent than the precaution");
    }

    @ParameterizedTest(name = "{0} -> {1}: {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "{at: 12, level: chilled}, {at: 24     | {at: 24, level: chilled}, {at: 24     | 24 is not above the band before it",
                "{at: 0, level: frozen}, {at: 12       | {at: 1, level: frozen}, {at: 12       | does not start at the least value",
                "{at: 24, level: right}                | {at: 24.2, level: right}              | 24.2 is not on a step",
                "{at: 12, level: chilled}, {at: 24, level: right} | {at: 12, level: right}, {at: 24, level: chilled} | jump to 'hot'",
                "{at: 24, level: right}, {at: 40       | {at: 40                               | jump to 'hot'",
                "- from: [{at: 0, level: frozen}, {at: 12 | - companionUpTo: 60\\n        from: [{at: 0, level: frozen}, {at: 12 | there is none for lifeStage hatchling",
                "- from: [{at: 0, level: frozen}, {at: 12 | - when: {lifeStage: [adult]}\\n        from: [{at: 0, level: frozen}, {at: 12 | there is none for lifeStage hatchling",
            })
    void bandsThatDoNotCoverEveryNumberOnceInOrder(String line, String broken, String wrong) throws IOException {
        assertThat(faultsOf(replaced(line, broken))).extracting(Fault::wrong).anyMatch(it -> it.contains(wrong));
    }

    @ParameterizedTest(name = "{0} -> {1}: {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "when: {limp: [present]}               | when: {limp: [present], dull: [mild]}  | depends on more than one other finding",
                "when: {limp: [present]}               | when: {dull: [mild, marked]}           | depend on 2 other findings",
                "when: {limp: [present]}               | when: {temperature: [hot]}             | depends on the finding itself",
                "{at: 14, level: chilled}, {at: 26, level: right} | {at: 9, level: chilled}, {at: 16, level: right} | 9 is 'chilled' with limp 'present', but 'frozen' with 'absent'",
                "when: {lifeStage: [hatchling], limp: [present]}  | when: {lifeStage: [hatchling], limp: [absent]} | 36 is 'right' with limp 'present', but 'hot' with 'absent'",
            })
    void aBandCaseThatDependsOnTheWrongThing(String line, String broken, String wrong) throws IOException {
        assertThat(faultsOf(replaced(line, broken))).extracting(Fault::wrong).anyMatch(it -> it.contains(wrong));
    }

    @Test
    void aFindingThatDependsBothOnAnotherOneAndOnConditions() throws IOException {
        assertThat(faultsOf(replaced("masks: [breath]", "masks: [breath, temperature]")))
                .extracting(Fault::wrong)
                .contains("temperature: depend on limp, and a condition masks or explains the finding");
        assertThat(faultsOf(replaced("mustSee: [dull]", "mustSee: [dull, temperature]")))
                .extracting(Fault::wrong)
                .contains("temperature: is said of a finding that depends on limp");
    }

    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "{finding: dull, level: absent, then: limp, is: absent} | {finding: dull, level: mild, then: limp, is: absent}",
                "{finding: dull, level: absent, then: limp, is: absent} | {finding: dull, level: absent, then: limp, is: present}",
                "{finding: dull, level: absent, then: limp, is: absent} | {finding: condition, level: fit, then: limp, is: absent}",
                "{finding: dull, level: absent, then: limp, is: absent} | {finding: dull, level: absent, then: temperature, is: right}",
            })
    void anImplicationThatIsNotFromReassuringToReassuring(String line, String broken) throws IOException {
        assertThat(faultsOf(replaced(line, broken)))
                .extracting(Fault::right)
                .contains("from the reassuring level of a finding with one chain to a reassuring level");
    }

    @Test
    void anImplicationOfWhatImpliesSomethingItself() throws IOException {
        String broken = replaced(
                "  - {finding: dull, level: absent, then: limp, is: absent}",
                "  - {finding: dull, level: absent, then: limp, is: absent}\n"
                        + "  - {finding: breath, level: absent, then: dull, is: absent}");

        assertThat(faultsOf(broken)).extracting(Fault::wrong).contains("'dull' implies something itself");
    }

    @Test
    void aCombinationWithoutOutcomeAndIsolation() throws IOException {
        Checklist whole = read(base());
        ChecklistDraft.Combination it = whole.draft().combinations().get(0);
        ChecklistDraft.Combination empty = new ChecklistDraft.Combination(
                it.id(), it.title(), it.reason(), it.when(), it.groups(), null, null, it.source());

        assertThat(ReferenceCheck.faultsOf(withCombination(whole.draft(), empty)))
                .containsExactly(
                        new Fault("/combinations/0", "decides nothing", "an outcome, an isolation route, or both"));
        assertThat(faultsOf(replaced("    outcome: asap\n    isolate: air\n", "")))
                .isNotEmpty();
    }

    @ParameterizedTest(name = "{0} -> {1}: {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "atLeast: 1                            | atLeast: 3                            | is 3",
                "[{finding: dull, level: mild}, {finding: breath, level: mild}] | [{finding: dull, level: mild}, {finding: dull, level: mild}] | names a term twice",
                "id: limp\\n                           | id: dull\\n                           | 'dull' is there twice",
                "codes: [standard, strict]             | codes: [standard, strict, sealed]     | holds 3 codes",
                "{from: 8, outcome                     | {upTo: 8, outcome                     | has the wrong kind of threshold",
                "{code: absent, points: 0}\\n      - {code: mild, points: 2} | {code: absent, points: 1}\\n      - {code: mild, points: 2} | is not zero in a family",
                "values: [adult], route                | values: [unknown], route              | 'unknown' counts as 'hatchling'",
                "findings: [exposed], attribute        | findings: [condition], attribute      | 'condition' can be known to be bad and then isolates less",
            })
    void whatElseWouldNeverHoldOrMeanTwoThings(String line, String broken, String wrong) throws IOException {
        List<Fault> faults = faultsOf(replaced(line, broken));
        assertThat(faults).extracting(Fault::toString).anyMatch(it -> it.contains(wrong));
    }

    @Test
    void aShapeThatTheSchemaDoesNotKnow() throws IOException {
        assertThat(faultsOf(replaced("status: draft", "status: finished\ncolour: red")))
                .extracting(Fault::pointer)
                .contains("/status", "");
        assertThat(faultsOf("title: ["))
                .singleElement()
                .satisfies(fault -> assertThat(fault.wrong()).startsWith("is not YAML"));
        assertThat(faultsOf(replaced("version: 1", "version: 1\nversion: 2")))
                .singleElement()
                .satisfies(fault -> assertThat(fault.wrong()).startsWith("is not YAML"));
    }

    @Test
    void namesEveryFaultOfAFileAtOnce() throws IOException {
        List<Fault> references = faultsOf(replaced("masks: [breath]", "masks: [breth]")
                .replace("floor: stat", "floor: now")
                .replace("isolate: contact", "isolate: touch")
                .replace("then: limp", "then: lump"));
        assertThat(references)
                .extracting(Fault::pointer)
                .containsExactly(
                        "/conditions/0/masks",
                        "/findings/1/levels/1/floor",
                        "/findings/4/levels/1/isolate",
                        "/implies/0");

        List<Fault> laws = faultsOf(replaced("precaution: {outcome: urgent", "precaution: {outcome: stat")
                .replace("points: 5, floor: asap, isolate: air", "points: 5, floor: asap")
                .replace("level: mild, meanwhile: urgent", "level: marked, meanwhile: urgent"));
        assertThat(laws)
                .extracting(Fault::pointer)
                .contains(
                        "/findings/0/mustSee",
                        "/findings/2/mustSee",
                        "/findings/2/chains/0",
                        "/conditions/0/explains/0");

        ChecklistRefused refused = refusalOf(replaced("masks: [breath]", "masks: [breth]"));
        assertThat(refused)
                .hasMessageContaining("base version 1 is refused, 1 fault")
                .hasMessageContaining("breth");
    }

    private static String base() throws IOException {
        try (InputStream in =
                Objects.requireNonNull(LoaderRefusalsTest.class.getResourceAsStream("/charts/refusals-base.yaml"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static String replaced(String line, String broken) throws IOException {
        String base = base();
        String from = line.replace("\\n", "\n");
        assertThat(base).as("the file that is to be broken").contains(from);
        int at = base.indexOf(from);
        return base.substring(0, at) + broken.replace("\\n", "\n") + base.substring(at + from.length());
    }

    private static Checklist read(String text) {
        return READER.read("base version 1", text.getBytes(StandardCharsets.UTF_8));
    }

    private static ChecklistRefused refusalOf(String text) {
        return Objects.requireNonNull(catchThrowableOfType(ChecklistRefused.class, () -> read(text)), "was accepted");
    }

    private static List<Fault> faultsOf(String text) {
        return refusalOf(text).faults();
    }

    private static ChecklistDraft withCombination(ChecklistDraft draft, ChecklistDraft.Combination combination) {
        return new ChecklistDraft(
                draft.id(),
                draft.version(),
                draft.status(),
                draft.title(),
                draft.about(),
                draft.notices(),
                draft.outcomes(),
                draft.total(),
                draft.precaution(),
                draft.nextLook(),
                draft.attributes(),
                draft.isolation(),
                draft.sections(),
                draft.families(),
                draft.conditions(),
                draft.findings(),
                draft.implies(),
                List.of(combination),
                draft.advice(),
                draft.sources());
    }
}
