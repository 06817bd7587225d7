package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Statement;

/**
 * What an answer rests on, and how weak its weakest part is.
 *
 * @param grade the weakest grade among the statements; empty if the answer rests on none
 * @param statements the statements on the ways of non-zero weight to the traits asked for, in the order of the model's document
 */
public record EvidenceLevel(Optional<Grade> grade, List<Statement> statements) {

    /**
     * Copies the statements.
     *
     * @param grade the weakest grade
     * @param statements the statements
     */
    public EvidenceLevel {
        statements = ImmutableList.copyOf(statements);
    }

    /**
     * Returns the level of some statements.
     *
     * @param statements the statements an answer rests on
     * @return the statements with their weakest grade
     */
    public static EvidenceLevel of(List<Statement> statements) {
        return new EvidenceLevel(statements.stream().map(Statement::grade).reduce(Grade::weaker), statements);
    }

    /**
     * Returns the statements that have the weakest grade.
     *
     * @return the statements to look at first when the answer is doubted
     */
    public List<Statement> weakest() {
        return statements.stream()
                .filter(statement -> grade.isPresent() && statement.grade() == grade.get())
                .toList();
    }
}
