package varanid.intake.infection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.dataformat.yaml.YAMLMapper;

class SamplingDefaultsTest {

    private static final SamplingDefaults DEFAULTS = read();

    private static SamplingDefaults read() {
        try (InputStream file = SamplingDefaultsTest.class.getResourceAsStream("/shared/reference/sampling.yaml")) {
            return YAMLMapper.builder()
                    .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                    .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
                    .build()
                    .readValue(Objects.requireNonNull(file), SamplingDefaults.class);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Herpetology Notes 17, 2024: 100 of 105; Rataj 2011: 252 of 331; Rinaldi 2012: 3 of 25. */
    @Test
    void priorsAreTheRoundedPublishedProportions() {
        assertThat(prior("helminths", "wild")).isCloseTo(100 / 105.0, within(.005));
        assertThat(prior("helminths", "farmed")).isCloseTo(252 / 331.0, within(.005));
        assertThat(prior("cryptosporidium", "captive")).isEqualTo(3 / 25.0);
    }

    @Test
    void everyFigureSaysWhereItIsFromAndHowWeakItIs() {
        assertThat(DEFAULTS.warning()).contains("Assumptions");
        assertThat(DEFAULTS.priors()).allSatisfy(prior -> {
            assertThat(prior.source()).isNotBlank();
            assertThat(prior.weakness()).isNotBlank();
        });
        assertThat(DEFAULTS.methods()).isNotEmpty().allSatisfy(method -> {
            assertThat(method.source()).startsWith("X: own guess");
            assertThat(method.weakness()).isNotBlank();
            assertThat(method.quality().isInformative()).isTrue();
        });
        assertThat(Stream.of(DEFAULTS.correlation(), DEFAULTS.targetFreedom(), DEFAULTS.introductionPerRound()))
                .allSatisfy(figure -> assertThat(figure.source()).startsWith("X: own proposal"));
    }

    /** Three of 25: the interval that the file's remark on Cryptosporidium speaks of. */
    @Test
    void theRemarkOnThreeOfTwentyFiveIsRight() {
        Proportion.Interval interval = new Proportion(3, 25).wilson(.95);
        assertThat(interval.lower()).isCloseTo(.04, within(.005));
        assertThat(interval.upper()).isCloseTo(.30, within(.005));
    }

    @Test
    void whatNobodyAssumedIsNotThere() {
        assertThat(DEFAULTS.findPrior("salmonella", "wild")).isEmpty();
        assertThat(DEFAULTS.findMethod("swab")).isEmpty();
        assertThat(DEFAULTS.findMethod("pcr")).isPresent();
    }

    /** The agents that quarantine policy knows, beside the significant coccidia that a result cannot be named by. */
    @Test
    void namesEveryAgentThatAClockCanBeSetBackBy() {
        assertThat(DEFAULTS.listAgents())
                .containsExactlyInAnyOrder(
                        "entamoeba",
                        "coccidia",
                        "cryptosporidium",
                        "tapeworm",
                        "thorny-head",
                        "pinworm",
                        "flagellates",
                        "other-worm",
                        "salmonella",
                        "other-agent",
                        "mites",
                        "ticks");
        assertThat(DEFAULTS.findGroup("tapeworm").orElseThrow().id()).isEqualTo("helminths");
    }

    @Test
    void everyOriginHasAPriorOfEveryAgentWithFigures() {
        assertThat(DEFAULTS.origin("no code")).isEqualTo("unknown");
        for (String origin : DEFAULTS.origins().values()) {
            for (SamplingDefaults.Method method : DEFAULTS.methods()) {
                assertThat(method.agents())
                        .allSatisfy(agent -> assertThat(DEFAULTS.findPrior(agent, origin))
                                .as(agent + " " + origin)
                                .isPresent());
            }
        }
    }

    @Test
    void neverCallsAnAnimalWhatAFigureCannotSay() {
        assertThat(DEFAULTS.texts().toString().toLowerCase(java.util.Locale.ROOT))
                .doesNotContain("healthy")
                .doesNotContain("safe")
                .doesNotContain("cleared");
    }

    private static double prior(String agent, String origin) {
        return DEFAULTS.findPrior(agent, origin).orElseThrow().infected();
    }
}
