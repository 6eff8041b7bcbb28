/**
 * The manners of HTTP: who asks, what a body says, how a refusal looks, how a list is paged, how a POST is done once.
 *
 * <p><b>Words.</b> A <em>caller</em> is a person of an organisation, known by a bearer token or by a session. A <em>fault</em> is one
 * thing wrong with a request; a <em>problem</em> is the refusal that names them (RFC 9457).
 *
 * <p><b>Always.</b> Every refusal is {@code application/problem+json}, or for a browser outside the API a page. A readable request gets all its faults at once
 * (422), each with a JSON Pointer, what is wrong and what would be right; an unreadable one gets the one reason (400,
 * 401, 413, 415). A body is read only after authentication, and only up to 256 KiB. Text is in normal form C and has no
 * control characters. What belongs to another organisation is not found (404).
 *
 * <p><b>How a controller uses it.</b> Parameters of these types are filled in: {@link
 * varanid.intake.platform.web.Caller}, {@link varanid.intake.platform.web.JsonRequest}, {@link
 * varanid.intake.platform.web.Query}, {@link varanid.intake.platform.web.IfMatch} (without the header, 428).
 *
 * <pre>{@code
 * @PostMapping("/api/v1/animals")
 * ResponseEntity<byte[]> register(Caller caller, @RequestBody(content = ...) JsonRequest request) {
 *     caller.require(Role.KEEPER);                                          // else 403
 *     Registration registration = request.read(Registration::reader);       // else 422 with every fault
 *     return once.perform(caller, request, () -> {                          // one transaction, once per key
 *         AnimalRow row = animals.add(caller, registration);
 *         return Reply.created("/api/v1/animals/" + row.id(), row.version(), AnimalView.of(row));
 *     });
 * }
 *
 * @GetMapping("/api/v1/animals")
 * ResponseEntity<Items<AnimalView>> list(Caller caller, Query query) {
 *     Given<UUID> consignment = query.id("consignment");                    // filters first
 *     Page page = query.page();                                             // else 422; unknown parameters too
 *     List<AnimalRow> rows = animals.list(caller.organisationId(), page.after(), page.fetch());
 *     return page.reply(rows, AnimalRow::id, AnimalView::of);               // Link: rel="next"
 * }
 *
 * @PutMapping("/api/v1/animals/{id}")
 * ResponseEntity<AnimalView> change(Caller caller, @PathVariable UUID id, IfMatch ifMatch, JsonRequest request) {
 *     ...
 *     ifMatch.require(row.version());                                       // else 412
 * }
 *
 * // A reader of one object: ask for every field, then say how to make the value.
 * static Supplier<Reading> reader(JsonFields fields) {
 *     Given<String> scale = fields.text("scale", 60).required();
 *     Given<Instant> at = fields.pastInstant("occurredAt", present);
 *     Given<Map<String, Answer>> answers = fields.entries("answers", 200, (finding, value) -> value.isNumber()
 *             ? value.decimal(ZERO, TEN, 2).map("...", Measured::new)
 *             : value.choice(levels, Level::code).map("...", Seen::new));
 *     return () -> new Reading(scale.get(), at.orElse(present.now()), answers.get());
 * }
 * }</pre>
 *
 * <p>A file comes as a {@link varanid.intake.platform.web.FileUpload}: ask whether the caller may, then
 * {@code upload.receive(request -> once.perform(caller, request, ...))}; its fields are read like those of an object.
 *
 * <p>A feature refuses with {@link varanid.intake.platform.web.ProblemException}, and may have its own {@link
 * varanid.intake.platform.web.ProblemType}. An id in the path is a {@code @PathVariable UUID}: what is no UUID is 404.
 *
 * <p>A document that people read and print, in a type they choose, is sent by {@link
 * varanid.intake.platform.web.Documents}.
 *
 * <p>What is to be read without a token is a {@link varanid.intake.platform.web.SecretPath}; what is shown once and stored
 * as a hash is a {@link varanid.intake.platform.web.SecretText}.
 *
 * <p>May use: Spring, {@code platform.id}, {@code platform.time}. Knows no feature: who a token or a session belongs
 * to is answered by implementations of {@link varanid.intake.platform.web.CallerLookup} and {@link
 * varanid.intake.platform.web.SessionCallerLookup} elsewhere, and how a page looks by {@link
 * varanid.intake.platform.web.ErrorPage}.
 */
@NullMarked
package varanid.intake.platform.web;

import org.jspecify.annotations.NullMarked;
