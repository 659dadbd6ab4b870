import { useEffect, useRef, useState } from 'react'
import { pickedNews, sketchNews } from '../../../core/sketch/sketch-news.ts'
import { useJob, useView } from '../../state/app.ts'

/** Tells a screen reader what is picked on the sheet, and what a drag, a key or an undo changed there. */
export function SketchNews() {
  const job = useJob()
  const selectedIds = useView((state) => state.selectedIds)
  const before = useRef(job)
  const [news, setNews] = useState('')
  useEffect(() => {
    setNews(before.current === job ? pickedNews(job, selectedIds) : sketchNews(before.current, job))
    before.current = job
  }, [job, selectedIds])
  return (
    <p className="unseen" role="status" data-testid="sketch-news">
      {news}
    </p>
  )
}
