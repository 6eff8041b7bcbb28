package varanid.intake.cagecard;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;

/** The page, as text. */
class CardHtmlTest {

    @ParameterizedTest
    @MethodSource("varanid.intake.cagecard.CardFixtures#all")
    void isWellFormedAndHasNothingThatActs(CageCard card) throws Exception {
        String html = CardPages.html(card);

        Document page = DocumentBuilderFactory.newNSInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(
                        html.replace("<!DOCTYPE html>", "").getBytes(StandardCharsets.UTF_8)));
        assertThat(page.getElementsByTagName("script").getLength()).isZero();
        assertThat(page.getElementsByTagName("img").getLength()).isZero();
        assertThat(page.getElementsByTagName("h1").getLength()).isOne();
    }

    @Test
    void tellsStrictIsolationInWordsAtTheTopAndByItsFrame() {
        String strict = CardPages.html(CardFixtures.nothingKnown());
        assertThat(strict).contains("class=\"card strict ");
        assertThat(strict.indexOf("Strict isolation")).isPositive().isLessThan(strict.indexOf("<h1"));

        String standard = CardPages.html(CardFixtures.calm());
        assertThat(standard).contains("class=\"card standard ").doesNotContain("Strict isolation");
        assertThat(standard.indexOf("Apart from residents")).isGreaterThan(standard.indexOf("<h1"));
    }

    @Test
    void saysOnceHowSoonAVetWhereItHeadsTheCard() {
        assertThat(CardPages.html(CardFixtures.emergency())).contains("Vet now").doesNotContain("How soon a vet");
        assertThat(CardPages.html(CardFixtures.calm())).contains("How soon a vet");
    }

    @Test
    void cutsLongNamesAndShowsThatItDid() {
        assertThat(CardPages.html(CardFixtures.longNames()))
                .contains("W".repeat(39) + "…")
                .doesNotContain("W".repeat(110))
                .doesNotContain("M".repeat(40));
    }

    @Test
    void holdsTheCardsOfARoomFourOnASheet() {
        String html = CardPages.html("Boat <house>", CardFixtures.all().subList(0, 5));

        assertThat(html.split("class=\"sheet\"", -1)).hasSize(3);
        assertThat(html.split("class=\"card ", -1)).hasSize(6);
        assertThat(html).contains("Cage cards: Boat &lt;house&gt;");
        assertThat(CardPages.html("Boat house", List.of())).contains("Nobody stands in this room.");
    }
}
