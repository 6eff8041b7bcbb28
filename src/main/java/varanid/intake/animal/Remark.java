package varanid.intake.animal;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * Something a person should look at; it stops nothing.
 *
 * @param pointer what of the animal it is about, a JSON Pointer as a URI fragment
 * @param remark in words
 */
@Schema(name = "Remark")
public record Remark(@Schema(example = "#/transponder") String pointer, String remark) {}
