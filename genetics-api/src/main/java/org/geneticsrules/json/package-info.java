/**
 * Documents as JSON files.
 *
 * <p>{@link org.geneticsrules.json.Documents} is the door. A file passes three steps, and each ends in a value or in one
 * {@link org.geneticsrules.problem.ProblemsException}:
 *
 * <ol>
 *   <li>The text becomes a tree in which every part knows its line and column. JSON is read strictly by RFC 8259: UTF-8, no
 *       comments, no repeated names, no lone surrogates (which RFC 8785 could not hash). A {@link org.geneticsrules.json.Limits limit}
 *       that is exceeded stops the reading, so a hostile file costs no more than an honest one of the largest allowed size.
 *   <li>The tree is compared with the shape of its kind of document; all differences are reported together. The same shapes are
 *       published as JSON Schemas (2020-12), see {@link org.geneticsrules.json.Documents#schema}.
 *   <li>The parts are put into the ordinary builders, so what a file may say is checked exactly as what a program says.
 * </ol>
 *
 * <p>Problems carry a JSON Pointer and a position in the text, but not the name of the file: a caller that reads several knows
 * which one it was, and {@link org.geneticsrules.json.Source#name} gives what to print before the problem.
 *
 * <p>A {@link org.geneticsrules.json.FrozenAnalysis} is a document that holds others. It is read in this order: its own shape, then the hash of
 * every document in it and of the answer, then the catalogues, then what refers to them, then what patches make of the models. Problems
 * within a document are placed in the whole.
 *
 * <p>This is the only package that needs Jackson, and it needs it only for reading.
 */
@NullMarked
package org.geneticsrules.json;

import org.jspecify.annotations.NullMarked;
