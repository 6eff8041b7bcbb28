package varanid.intake.platform.web;

import java.util.function.Supplier;

/**
 * Reads one JSON object: asks for each field, then says how to make the value of them. The supplier is asked only
 * where the object has no fault, so it may {@link Given#get() get} what it required; what it throws as
 * {@link IllegalArgumentException} becomes a fault of the whole object.
 *
 * @param <R> what the object means
 */
@FunctionalInterface
public interface ObjectReader<R> {

    Supplier<R> read(JsonFields fields);
}
