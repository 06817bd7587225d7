package org.geneticsrules.answer.recorded;

/** Is told how far a long question has come. It may throw to stop it, for example a {@link java.util.concurrent.CancellationException}. */
@FunctionalInterface
public interface Progress {

    /** Nobody listens. */
    Progress NONE = (done, all) -> {};

    /**
     * Is called by the thread that answers, now and then.
     *
     * @param done how much is done
     * @param all how much there is, at least 1
     */
    void at(long done, long all);

    /**
     * Is called by the thread that answers before it works out the chances of relatives, and once more when all are done.
     *
     * @param kindreds how many sets of relatives are left, those that come next included; 0 at the end
     */
    default void left(int kindreds) {}
}
