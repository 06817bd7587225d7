package org.geneticsrules.json;

import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.DocumentChange;
import org.geneticsrules.answer.compared.LitterAnswer;
import org.geneticsrules.document.Differences;
import org.geneticsrules.document.Library;
import org.geneticsrules.document.Node;
import org.geneticsrules.problem.ProblemsException;

/**
 * A question about litters with everything its answer hangs on, and the answer as it came out. Written as a document it needs no plug-in and
 * no other file, and can be run again at any time.
 *
 * <pre>{@code
 * FrozenAnalysis frozen = FrozenAnalysis.of(analysis);
 * Documents.save(Documents.write(frozen), file);
 * Rerun again = Documents.reader().readAnalysis(Source.of(file)).rerun();
 * again.answer().isEmpty();   // nothing moved
 * }</pre>
 *
 * <p>With the library that wrote it, the answer is the same to the letter. Numbers that are no exact fractions are written with twelve
 * digits; on another machine or another release of Java the last of them may differ, since Java leaves the last bit of logarithms and powers
 * to the platform. {@link Differences} allows for that and for nothing else.
 *
 * <p>Hashes find what was changed by mistake, in the records, a model or the answer. They are no signature: who changes a document on
 * purpose can write new hashes too. Keep the hash of the file elsewhere, or sign the file, where that matters.
 *
 * <p>Immutable and thread-safe.
 *
 * @param analysis the question
 * @param answer the document of its answer
 * @param library the version of the library that answered
 */
public record FrozenAnalysis(Analysis analysis, Node answer, String library) {

    /**
     * Asks a question and freezes it with the answer.
     *
     * @param analysis the question
     * @return the question and its answer by this version of the library
     * @throws ProblemsException as {@link Analysis#run} does
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public static FrozenAnalysis of(Analysis analysis) {
        return of(analysis, analysis.run());
    }

    /**
     * Freezes a question with an answer that {@link Analysis#run} just gave.
     *
     * @param analysis the question
     * @param answer its answer
     * @return both, by this version of the library
     */
    public static FrozenAnalysis of(Analysis analysis, LitterAnswer answer) {
        return new FrozenAnalysis(analysis, LitterDocument.of(answer), Library.VERSION);
    }

    /**
     * Asks the same again, of the same models and records.
     *
     * @return what came out now, and what moved
     * @throws ProblemsException as {@link Analysis#run} does
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public Rerun rerun() {
        return rerun(analysis);
    }

    /**
     * Asks another question in place of this, such as the same of newer models.
     *
     * @param other the question
     * @return what came out now, and what moved
     * @throws ProblemsException as {@link Analysis#run} does
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public Rerun rerun(Analysis other) {
        FrozenAnalysis now = of(other);
        return new Rerun(this, now, Differences.between(answer, now.answer()), DocumentChange.between(analysis, other));
    }

    /**
     * Returns the document form.
     *
     * @return a document of kind {@code analysis}, format version 0, that holds all others
     */
    public Node toNode() {
        return AnalysisDocument.of(this);
    }
}
