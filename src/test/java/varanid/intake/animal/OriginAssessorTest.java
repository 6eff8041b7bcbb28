package varanid.intake.animal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OriginAssessorTest {

    private static final ReferenceData REFERENCE = new ReferenceData();
    private static final ProvenanceRules RULES = REFERENCE.provenance();
    private static final OriginAssessor ASSESSOR = new OriginAssessor(RULES);

    @Test
    void saysNothingWithoutEvidence() {
        OriginView origin = ASSESSOR.assess(Optional.empty(), Map.of());
        assertThat(origin.assessed()).isEqualTo(AssessedOrigin.UNDETERMINED);
        assertThat(origin.steering()).isEqualTo("U");
        assertThat(origin.reasons()).isEmpty();
    }

    @Test
    void believesTheSignsOfTheWildRatherThanThePaper() {
        OriginView origin =
                ASSESSOR.assess(declared("C"), Map.of("ticks", Evidence.YES, "hatch-date-known", Evidence.NO));
        assertThat(origin.declared()).isEqualTo("C");
        assertThat(origin.assessed()).isEqualTo(AssessedOrigin.WILD_LIKELY);
        assertThat(origin.steering()).isEqualTo("W");
        assertThat(origin.reasons())
                .extracting(OriginView.Reason::evidence)
                .containsExactly("ticks", "hatch-date-known");
    }

    @Test
    void doesNotBelieveADeclaredCaptiveOriginWithoutEvidence() {
        assertThat(ASSESSOR.assess(declared("C"), Map.of()).steering()).isEqualTo("U");
    }

    @Test
    void believesARecordOfBreeding() {
        OriginView origin = ASSESSOR.assess(
                declared("C"), Map.of("parents-known", Evidence.YES, "breeder-reachable", Evidence.YES));
        assertThat(origin.assessed()).isEqualTo(AssessedOrigin.CAPTIVE_LIKELY);
        assertThat(origin.steering()).isEqualTo("C");
    }

    @Test
    void letsTheDeclaredOriginSteerWhereItIsTheRiskier() {
        Map<String, Evidence> bred = new HashMap<>();
        RULES.questions().forEach(question -> bred.put(question.id(), mildest(question)));
        assertThat(ASSESSOR.assess(declared("W"), bred).assessed()).isNotEqualTo(AssessedOrigin.WILD_LIKELY);
        for (String code : List.of("W", "R", "F", "U", "I", "X")) {
            assertThat(ASSESSOR.assess(declared(code), bred).steering()).isEqualTo(code);
        }
    }

    /** A law, on seeded cases: whatever is known, one answer more for the wild never makes an animal less wild. */
    @Test
    void moreEvidenceOfTheWildNeverMakesItLessWild() {
        Random random = new Random(20261125);
        List<SourceCode> codes = REFERENCE.listSourceCodes();
        for (int i = 0; i < 50_000; i++) {
            Optional<SourceCode> declared =
                    random.nextInt(4) == 0 ? Optional.empty() : Optional.of(codes.get(random.nextInt(codes.size())));
            Map<String, Evidence> before = new HashMap<>();
            for (ProvenanceRules.Question question : RULES.questions()) {
                before.put(question.id(), Evidence.values()[random.nextInt(3)]);
            }
            ProvenanceRules.Question changed =
                    RULES.questions().get(random.nextInt(RULES.questions().size()));
            Evidence answer = Evidence.values()[random.nextInt(3)];
            if (points(changed, answer) < points(changed, before.getOrDefault(changed.id(), Evidence.UNKNOWN))) {
                continue;
            }
            Map<String, Evidence> after = new HashMap<>(before);
            after.put(changed.id(), answer);
            OriginView less = ASSESSOR.assess(declared, before);
            OriginView more = ASSESSOR.assess(declared, after);
            assertThat(more.assessed()).isGreaterThanOrEqualTo(less.assessed());
            assertThat(risk(more)).isGreaterThanOrEqualTo(risk(less));
        }
    }

    @Test
    void theSteeringOriginIsNeverLessRiskyThanEither() {
        Random random = new Random(7);
        for (SourceCode code : REFERENCE.listSourceCodes()) {
            for (int i = 0; i < 500; i++) {
                Map<String, Evidence> evidence = new HashMap<>();
                RULES.questions()
                        .forEach(question -> evidence.put(question.id(), Evidence.values()[random.nextInt(3)]));
                OriginView origin = ASSESSOR.assess(Optional.of(code), evidence);
                assertThat(risk(origin)).isGreaterThanOrEqualTo(code.risk());
                assertThat(risk(origin)).isGreaterThanOrEqualTo(OriginAssessor.risk(origin.assessed()));
            }
        }
    }

    private static Evidence mildest(ProvenanceRules.Question question) {
        return question.yes().points() <= question.no().points() ? Evidence.YES : Evidence.NO;
    }

    private static int points(ProvenanceRules.Question question, Evidence answer) {
        return switch (answer) {
            case YES -> question.yes().points();
            case NO -> question.no().points();
            case UNKNOWN -> 0;
        };
    }

    private static OriginRisk risk(OriginView origin) {
        return REFERENCE.getSourceCode(origin.steering()).risk();
    }

    private static Optional<SourceCode> declared(String code) {
        return Optional.of(REFERENCE.getSourceCode(code));
    }
}
