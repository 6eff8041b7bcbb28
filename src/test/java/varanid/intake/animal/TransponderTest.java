package varanid.intake.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * ISO 11784: 10 bits of country or manufacturer, 38 bits of identification, written as 3 and 12 digits. That 900 to 998
 * are manufacturers and 999 marks test devices is from memory, widely repeated.
 */
class TransponderTest {

    @ParameterizedTest
    @CsvSource({
        "985112345678903, MANUFACTURER",
        "276098102345678, COUNTRY",
        "360274877906943, COUNTRY",
        "900000000000001, MANUFACTURER",
        "998000000000001, MANUFACTURER",
        "001000000000000, COUNTRY",
    })
    void takesNumbersOfIso(String number, Transponder.Issuer issuer) {
        Transponder transponder = Transponder.parse(number);
        assertThat(transponder.standard()).isEqualTo(Transponder.Standard.ISO_11784);
        assertThat(transponder.issuer()).isEqualTo(issuer);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "360274877906944",
                "840999999999999",
                "999000000000001",
                "000123456789012",
                "98511234567890",
                "98511234567890A",
                "9851123456789031",
                "12345678",
                "12345678901",
                "",
                "１２３４５６７８９",
            })
    void refusesWhatNoAnimalCanHave(String number) {
        assertThatIllegalArgumentException().isThrownBy(() -> Transponder.parse(number));
    }

    @Test
    void refusesATransponderAboveThirtyEightBits() {
        assertThat(Transponder.LARGEST_IDENTIFICATION).isEqualTo(274_877_906_943L);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Transponder.parse("985274877906944"))
                .withMessageContaining("38 bits");
    }

    @ParameterizedTest
    @ValueSource(strings = {"123456789", "012A3B4C5D"})
    void keepsOlderChipsAsUnverified(String number) {
        Transponder transponder = Transponder.parse(number);
        assertThat(transponder.standard()).isEqualTo(Transponder.Standard.UNVERIFIED);
        assertThat(transponder.number()).isEqualTo(number);
    }

    @Test
    void doesNotMindBlanksAndHyphens() {
        assertThat(Transponder.parse("985 112-345 678 903").number()).isEqualTo("985112345678903");
    }

    /** Bit 1 as the most significant, animal flag set, reserved bits zero. */
    @Test
    void hasTheBitsOfTheStandard() {
        assertThat(Transponder.parse("985112345678903").bits()).isEqualTo(0x8000F65A28530437L);
        assertThat(Transponder.parse("276098102345678").bits()).isEqualTo(0x80004516D75AFFCEL);
    }
}
