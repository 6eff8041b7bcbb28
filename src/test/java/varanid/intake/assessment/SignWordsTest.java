package varanid.intake.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SignWordsTest {

    @Test
    void tellsASignWithWhatItIsAbout() {
        assertThat(SignWords.tell("open-mouth-breathing", "Open all the time"))
                .isEqualTo("Open mouth breathing: open all the time");
    }

    @Test
    void leavesCapitalsAndWhatIsNoLetter() {
        assertThat(SignWords.small("UV lamp")).isEqualTo("UV lamp");
        assertThat(SignWords.small("6 or more")).isEqualTo("6 or more");
        assertThat(SignWords.small("A")).isEqualTo("a");
        assertThat(SignWords.small("")).isEmpty();
        assertThat(SignWords.name("")).isEmpty();
    }
}
