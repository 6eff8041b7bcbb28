package varanid.intake.platform.web;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * JSON as RFC 8259 has it and no looser: UTF-8, no name twice in an object, nothing after the document, no comments, no
 * more than {@value #DEEPEST} levels.
 */
final class StrictJson {

    static final int DEEPEST = 32;
    static final int LONGEST_NUMBER = 40;

    private static final int LONGEST_MESSAGE = 200;

    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxNumberLength(LONGEST_NUMBER)
                            .maxNameLength(1_000)
                            .build())
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    private StrictJson() {}

    /** @throws ProblemException 400 that names the one fault */
    static JsonNode parse(byte[] bytes) {
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw ProblemException.malformed("The body is not UTF-8.");
        }
        try {
            JsonNode node = MAPPER.readTree(text);
            if (node.isMissingNode()) {
                throw ProblemException.malformed("The body is empty; a JSON document is expected.");
            }
            return node;
        } catch (StreamConstraintsException e) {
            throw ProblemException.malformed("The body is JSON beyond the limits" + place(e) + ": at most " + DEEPEST
                    + " levels deep, numbers of at most " + LONGEST_NUMBER + " digits.");
        } catch (NumberFormatException e) {
            throw ProblemException.malformed("The body has a number whose exponent is beyond all limits.");
        } catch (JacksonException e) {
            throw ProblemException.malformed("The body is not JSON" + place(e) + ": " + firstLine(e) + ".");
        }
    }

    private static String place(JacksonException e) {
        return e.getLocation() == null || e.getLocation().getLineNr() < 1
                ? ""
                : " at line " + e.getLocation().getLineNr() + ", column "
                        + e.getLocation().getColumnNr();
    }

    private static String firstLine(JacksonException e) {
        if (e.getOriginalMessage() == null) {
            return "it ends early";
        }
        return Texts.visible(e.getOriginalMessage().lines().findFirst().orElse(""), LONGEST_MESSAGE);
    }
}
