@NullMarked
package org.geneticsrules.simulation;

import org.jspecify.annotations.NullMarked;
