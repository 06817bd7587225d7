package org.geneticsrules.testing.brute;

import java.util.List;
import java.util.Map;

/**
 * What was seen of one animal at one stage of its life.
 *
 * @param stage when it was looked at
 * @param look states it showed
 */
public record Seen(Map<String, String> stage, Map<String, String> look) {

    /**
     * A kit of a litter, as far as it was looked at.
     *
     * @param sex its sex, or {@code ""} if nobody looked
     * @param sightings what was seen, at one stage or several
     */
    public record Kit(String sex, List<Seen> sightings) {}
}
