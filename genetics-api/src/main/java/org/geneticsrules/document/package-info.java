/**
 * The plain form of every document: objects, lists, texts, whole numbers and truth values, with one canonical spelling, and what
 * is otherwise between two of them.
 *
 * <p>Catalogues, models, patches and cautions refer to one another by id, version and the SHA-256 of their canonical form, never by path
 * or address. The canonical form is that of RFC 8785 (JSON Canonicalization Scheme): members sorted by the UTF-16 code units of
 * their names, no spaces, shortest escapes. Because a hash must not depend on which library reads the file, the form is defined
 * here without any.
 *
 * <p>{@link org.geneticsrules.document.Differences} tells what is otherwise between two versions of a document:
 *
 * <ol>
 *   <li>Objects are compared member by member, whatever the order of the members.
 *   <li>Items of a list are the same if they go by the same: by one member that all of them have and by which each list can be told apart
 *       (an id, a title, a look), else by all such members together. Sentences are the same if they are equal. What goes by nothing is
 *       compared by its number. A list of the same items in another order is one difference.
 *   <li>An exact chance is one number, and any change of it is told. Other numbers, those in texts included, may differ by the tolerance.
 *       Texts are compared to the letter.
 * </ol>
 *
 * <p>So every change is told, at its own pointer or at that of the item or chance that it makes another.
 */
@NullMarked
package org.geneticsrules.document;

import org.jspecify.annotations.NullMarked;
