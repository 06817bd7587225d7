/**
 * The plain form of every document: objects, lists, texts, whole numbers and truth values, with one canonical spelling.
 *
 * <p>Catalogues, models, patches and cautions refer to one another by id, version and the SHA-256 of their canonical form, never by path
 * or address. The canonical form is that of RFC 8785 (JSON Canonicalization Scheme): members sorted by the UTF-16 code units of
 * their names, no spaces, shortest escapes. Because a hash must not depend on which library reads the file, the form is defined
 * here without any.
 */
@NullMarked
package org.geneticsrules.document;

import org.jspecify.annotations.NullMarked;
