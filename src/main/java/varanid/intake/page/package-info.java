/**
 * The pages for people in a browser: what stands around every page, signing in and out, one's own account, and what a
 * page says when something goes wrong.
 *
 * <p><b>Words.</b> The <em>frame</em> is what stands around the content of every page: head, skip link, navigation,
 * footer.
 *
 * <p><b>Always.</b> A page works without JavaScript and brings nothing from elsewhere. It has no script and no style in
 * itself, which the Content-Security-Policy would refuse. Every text is in {@code messages.properties}; every value is
 * escaped by the template. What changes something is a POST with the field {@code _csrf}, and ends in a redirect (303),
 * so that reloading sends nothing again.
 *
 * <p><b>How a page is made.</b>
 *
 * <pre>{@code
 * @Controller
 * class RoomsPage {
 *     @GetMapping("/rooms")
 *     ModelAndView rooms(Caller caller) {                                       // who is signed in; else /sign-in
 *         return new ModelAndView("rooms", Map.of("rooms", ...));               // templates/rooms.html
 *     }
 *
 *     @PostMapping("/rooms")
 *     ModelAndView add(Caller caller, @RequestParam String name) {
 *         ...
 *         return SeeOther.path("/rooms");
 *     }
 * }
 *
 * <!DOCTYPE html>
 * <html xmlns:th="http://www.thymeleaf.org" th:replace="~{frame :: page(#{rooms.title}, ~{:: content})}">
 * <body>
 * <th:block th:fragment="content">
 *   <h1 th:text="#{rooms.title}"></h1>
 *   <form method="post" action="/rooms">
 *     <input th:replace="~{frame :: csrf}">
 *     ...
 *   </form>
 * </th:block>
 * </body>
 * </html>
 *
 * // A script sends the same as a header:
 * fetch('/api/v1/rooms', {method: 'POST', headers: {
 *     'Content-Type': 'application/json',
 *     'X-CSRF-TOKEN': document.querySelector('meta[name="csrf"]').content}, body: ...})
 * }</pre>
 *
 * <p>May use: {@code account}, {@code platform} and ICU; and, for the pages in packages of their own, what their package-info
 * says.
 */
@NullMarked
package varanid.intake.page;

import org.jspecify.annotations.NullMarked;
