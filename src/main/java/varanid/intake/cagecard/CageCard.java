package varanid.intake.cagecard;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.net.URI;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a card says, whole: paper may cut a long name.
 *
 * @param title what is to be seen from afar: the tag, else the name, else the end of the id
 * @param name nothing where it has none or the title is it
 * @param beforeOpening in order
 */
@Schema(name = "CageCard")
@JsonInclude(JsonInclude.Include.NON_NULL)
record CageCard(
        UUID animalId,

        @Schema(description = "the animal's page, which the QR code holds: who opens it has to sign in")
        URI address,

        Instant printedAt,

        @Schema(description = "in which days and moments are meant")
        ZoneId zone,

        @Schema(description = "what heads the card, the weightiest first")
        List<Line> alerts,

        @Schema(description = "the tag, else the name, else the end of the id")
        String title,

        @Schema(description = "nothing where the title is it") @Nullable
        String name,

        @Nullable String tag,

        @Schema(description = "genus and species") @Nullable String species,

        @Schema(description = "in English, where one is known") @Nullable
        String commonName,

        Apart isolation,

        @Schema(description = "its room, or where else it is")
        String room,

        Stay quarantine,
        HowSoon howSoon,
        List<Line> handling,
        List<Line> beforeOpening,

        @Schema(description = "whom to call, as it is dialled; nothing where nobody has said") @Nullable
        String call) {

    CageCard {
        alerts = List.copyOf(alerts);
        handling = List.copyOf(handling);
        beforeOpening = List.copyOf(beforeOpening);
    }

    /**
     * Something to read.
     *
     * @param strong whether it was told of this animal, and not of all
     */
    @Schema(name = "CageCardLine")
    record Line(String code, String text, boolean strong) {}

    /**
     * How strictly apart.
     *
     * @param label in words
     * @param brief what that means, in one line
     * @param atTheDoor what it means for whoever comes
     */
    @Schema(name = "CageCardIsolation")
    record Apart(
            @Schema(allowableValues = {"standard", "strict"})
            String code,

            String label,
            String brief,
            List<String> atTheDoor) {

        Apart {
            atTheDoor = List.copyOf(atTheDoor);
        }

        /** Whether others are in danger from it, as far as anybody knows. */
        boolean isStrict() {
            return !code.equals("standard");
        }
    }

    /**
     * How its quarantine stands.
     *
     * @param start day 0
     * @param notBefore the first day on which a person may end it, as things stand
     */
    @Schema(name = "CageCardQuarantine")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Stay(
            @Schema(allowableValues = {"not-started", "running", "held", "residents", "gone"})
            String state,

            @Nullable LocalDate start,

            @Schema(description = "moves on with every day while it is on hold") @Nullable
            LocalDate notBefore,

            String startText,
            String releaseText) {}

    /** How soon a vet, and by whose word. */
    @Schema(name = "CageCardHowSoon")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record HowSoon(
            @Schema(description = "none where nobody has looked") @Nullable
            String urgency,

            String headline,
            String from) {}
}
