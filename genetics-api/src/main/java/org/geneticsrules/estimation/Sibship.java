package org.geneticsrules.estimation;

/**
 * Litters or families of one make-up, in which a recessive condition was looked for.
 *
 * @param siblings how many young each has
 * @param affected how many of them are affected
 * @param probands how many of the affected came to notice by themselves, and not through a sibling; as many as are affected where all
 *     families were looked at
 * @param families how many such families there are
 */
public record Sibship(int siblings, int affected, int probands, long families) {

    /**
     * Checks the counts.
     *
     * @param siblings how many young each has
     * @param affected how many are affected
     * @param probands how many came to notice by themselves
     * @param families how many such families there are
     * @throws IllegalArgumentException if a count is outside its range
     */
    public Sibship {
        if (siblings < 1 || affected < 0 || affected > siblings) {
            throw new IllegalArgumentException("expected at least 1 sibling and from 0 to as many affected, but found "
                    + affected + " affected of " + siblings);
        }
        if (probands < 0 || probands > affected) {
            throw new IllegalArgumentException("expected from 0 to as many probands as there are affected, but found "
                    + probands + " probands of " + affected + " affected");
        }
        if (families < 1) {
            throw new IllegalArgumentException("expected at least 1 such family, but found " + families);
        }
    }

    /**
     * Returns families in which it is not told apart who came to notice.
     *
     * @param siblings how many young each has
     * @param affected how many are affected
     * @param families how many such families there are
     * @return the same with all affected as probands
     * @throws IllegalArgumentException if a count is outside its range
     */
    public static Sibship of(int siblings, int affected, long families) {
        return new Sibship(siblings, affected, affected, families);
    }
}
